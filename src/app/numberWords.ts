/** Why a typed number is none, and how to mend it. */
import { err, type Result } from "../domain/result";
import { parseNumber } from "./parseNumber";

/** The number, or a sentence for beside its field. `limits` as a person reads them, such as "0 and 100 %". */
export function readNumber(
	typed: string,
	least: number,
	most: number,
	{ example, limits }: { readonly example: string; readonly limits: string },
): Result<number, string> {
	const parsed = parseNumber(typed, least, most);
	if (parsed.ok) return parsed;
	switch (parsed.error) {
		case "empty":
			return err(`Type a number here, such as ${example}.`);
		case "notANumber":
			return err(`Use digits and at most one comma or point, such as ${example}.`);
		case "tooSmall":
		case "tooLarge":
			return err(`It must lie between ${limits}: check the number.`);
	}
}

/** A typed percentage as a fraction. */
export function readPercent(typed: string, example: string, least = 0, most = 100): Result<number, string> {
	const parsed = readNumber(typed, least, most, { example, limits: `${least} and ${most} %` });
	return parsed.ok ? { ok: true, value: parsed.value / 100 } : parsed;
}

/** A fraction as a person would type it, in percent. */
export function typedPercent(fraction: number): string {
	return String(Math.round(fraction * 1000) / 10);
}
