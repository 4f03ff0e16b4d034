/** Why a typed number is none, and how to mend it. */
import { err, type Result } from "../domain/result";
import { parseNumber } from "./parseNumber";
import { typedNumber } from "./typedNumber";
import { numbersWords } from "./words/numbers";

interface Expected {
	/** Digits with a point. */
	readonly example: string;
	/** As they stand after "between", such as "0 and 100 %". */
	readonly limits: string;
	/** Whether the unit is easily taken for another. */
	readonly inUnit?: boolean;
}

/** The number, or a sentence for beside its field. */
export function readNumber(
	typed: string,
	least: number,
	most: number,
	{ example, limits, inUnit = false }: Expected,
): Result<number, string> {
	const words = numbersWords();
	const parsed = parseNumber(typed, least, most);
	if (parsed.ok) return parsed;
	switch (parsed.error) {
		case "empty":
			return err(words.empty(typedNumber(example)));
		case "notANumber":
			return err(words.notANumber(typedNumber(example)));
		case "tooSmall":
		case "tooLarge":
			return err(inUnit ? words.outsideInUnit(limits) : words.outside(limits));
	}
}

/** A typed percentage as a fraction. */
export function readPercent(typed: string, example: string, least = 0, most = 100): Result<number, string> {
	const limits = numbersWords().percentLimits(typedNumber(least), typedNumber(most));
	const parsed = readNumber(typed, least, most, { example, limits });
	return parsed.ok ? { ok: true, value: parsed.value / 100 } : parsed;
}

/** A typed uncertainty of a content, in points, as such. */
export function readPoints(typed: string): Result<number, string> {
	const [least, most] = [0.1, 25];
	const limits = numbersWords().pointLimits(typedNumber(least), typedNumber(most));
	return readNumber(typed, least, most, { example: "2.5", limits });
}

/** A fraction as a person would type it, in percent. */
export function typedPercent(fraction: number): string {
	return typedNumber(Math.round(fraction * 1000) / 10);
}
