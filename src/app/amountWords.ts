/** Amounts of a stop in words. */
import type { Product } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import { exactVolume, volume } from "./format";
import type { NumberFault } from "./parseNumber";
import { productName } from "./text";
import { fillWords } from "./words/fill";

/** "Save 12 L + 36.5 L"; `without`: a product of the plan whose amount is not typed yet. */
export function saveWords(amounts: readonly number[], unit: VolumeUnit, without: Product | null = null): string {
	const words = fillWords();
	if (amounts.length === 0) return words.save;
	const sum = sumWords(amounts, unit);
	return without ? words.saveWithout(sum, productName(without)) : words.saveAmounts(sum);
}

/** "12 L + 36.5 L". */
export function sumWords(amounts: readonly number[], unit: VolumeUnit): string {
	return amounts.map((litres) => exactVolume(litres, unit)).join(" + ");
}

/** Why an amount can't be used; `most` that the tank may hold, L. */
export function amountFault(fault: NumberFault, most: number, unit: VolumeUnit): string {
	const words = fillWords();
	switch (fault) {
		case "empty":
			return words.noAmount;
		case "notANumber":
			return words.notANumber;
		case "tooSmall":
			return words.tooSmall;
		case "tooLarge":
			return words.tooLarge(volume(most, unit));
	}
}
