/** Amounts of a stop in words. */
import type { Product } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import { exactVolume, volume } from "./format";
import type { NumberFault } from "./parseNumber";
import { productName } from "./text";

/** "Save 12 L + 36.5 L"; `without`: a product of the plan whose amount is not typed yet. */
export function saveWords(amounts: readonly number[], unit: VolumeUnit, without: Product | null = null): string {
	if (amounts.length === 0) return "Save";
	const left = without ? `, without ${productName(without)}` : "";
	return `Save ${amounts.map((litres) => exactVolume(litres, unit)).join(" + ")}${left}`;
}

/** Why an amount can't be used; `most` that the tank may hold, L. */
export function amountFault(fault: NumberFault, most: number, unit: VolumeUnit): string {
	switch (fault) {
		case "empty":
			return "How much was pumped? Type the amount as the pump shows it.";
		case "notANumber":
			return "This is not a number: use digits and one point or comma.";
		case "tooSmall":
			return "The amount must be more than nothing.";
		case "tooLarge":
			return `This tank cannot hold more than ${volume(most, unit)}: check the amount, the unit and the tank’s capacity under Car.`;
	}
}
