/** Fuels by what their labels allow, volume fraction of ethanol, each with its source. */
import type { Product } from "./event";
import { contentRange } from "./quantity";

export interface CatalogueEntry extends Product {
	/** Where the label is found: ISO 3166 country codes, EU, or any. */
	readonly sold: "US" | "EU" | "AU" | "BR" | "any";
	readonly source: string;
}

function entry(id: string, sold: CatalogueEntry["sold"], low: number, high: number, source: string): CatalogueEntry {
	return { id, sold, range: contentRange(low, high), source };
}

export const catalogue: readonly CatalogueEntry[] = [
	entry("flex-51-83", "US", 0.51, 0.83, "ASTM D5798-11 and later; 16 CFR 306"),
	entry("flex-30", "US", 0.25, 0.35, "16 CFR 306: rounded to the nearest ten"),
	entry("flex-40", "US", 0.35, 0.45, "16 CFR 306: rounded to the nearest ten"),
	entry("flex-50", "US", 0.45, 0.55, "16 CFR 306: rounded to the nearest ten"),
	entry("flex-60", "US", 0.55, 0.65, "16 CFR 306: rounded to the nearest ten"),
	entry("flex-70", "US", 0.65, 0.75, "16 CFR 306: rounded to the nearest ten"),
	entry("flex-80", "US", 0.75, 0.85, "16 CFR 306: rounded to the nearest ten"),
	entry("gasoline-e10", "US", 0.09, 0.1, "NREL memo, 26 March 2012: 9 to 10 % by volume"),
	entry("gasoline-to-10", "any", 0, 0.1, "pump label “up to 10 %”; EN 228 E10"),
	entry("gasoline-e0", "any", 0, 0.008, "state inspection tolerance, NCDA&CS 2013"),
	entry("gasoline-e15", "US", 0.1, 0.15, "76 FR 44406"),
	entry("gasoline-e5", "EU", 0, 0.05, "EN 228"),
	entry("gasoline-e20", "EU", 0.1, 0.2, "CEN/TS 18227"),
	entry("flex-e85-eu", "EU", 0.5, 0.85, "EN 15293"),
	entry("flex-e85-au", "AU", 0.7, 0.85, "Fuel Quality Standards (Ethanol E85) Determination 2019"),
	entry("gasoline-c", "BR", 0.29, 0.31, "30 % since 1 August 2025, plus or minus one point"),
	entry("ethanol-e98", "any", 0.921, 0.98, "ASTM D4806"),
];

/** The range of a flex fuel labelled with a percentage that may be rounded to the nearest ten (16 CFR 306). */
export function labelledRange(percent: number) {
	return contentRange(Math.max(0, percent / 100 - 0.05), Math.min(1, percent / 100 + 0.05));
}
