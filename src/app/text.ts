/** All the words that more than one screen needs: products, verdicts, warnings, cautions. */
import type { Product } from "../domain/event";
import type { Verdict, Warning } from "../domain/warnings";
import { exactPercent, exactPercentRange, inTwenty, percent } from "./format";

const productNames: Readonly<Record<string, string>> = {
	"flex-51-83": "Flex fuel E85 (US)",
	"gasoline-e10": "Gasoline E10 (US)",
	"gasoline-to-10": "Gasoline, up to 10 %",
	"gasoline-e0": "Gasoline, no ethanol",
	"gasoline-e15": "Gasoline E15 (US)",
	"gasoline-e5": "Gasoline E5 (EU)",
	"gasoline-e20": "Gasoline E20 (EU)",
	"flex-e85-eu": "E85 (EU)",
	"flex-e85-au": "E85 (Australia)",
	"gasoline-c": "Gasoline C (Brazil)",
	"ethanol-e98": "Denatured ethanol",
};

/** Flex fuel named by the percentage on its label: `flex-60`. */
const labelled = /^flex-(\d+(?:\.\d+)?)$/;

export function productName({ id }: Product): string {
	if (Object.hasOwn(productNames, id)) return productNames[id];
	const label = labelled.exec(id);
	return label ? `Flex fuel “${exactPercent(Number(label[1]) / 100)}”` : id;
}

/** What the label allows, as a person would read it off the pump. */
export function productRange({ range: [low, high] }: Product): string {
	return low === high ? exactPercent(low) : exactPercentRange(low, high);
}

export const soldIn = { US: "United States", EU: "Europe", AU: "Australia", BR: "Brazil", any: "Anywhere" } as const;

export const verdictWords: Readonly<Record<Verdict, { readonly line: string; readonly more: string }>> = {
	yes: { line: "Boost: yes", more: "The blend is inside the calibration’s window, as surely as you asked for." },
	unsure: { line: "Boost: not now", more: "The blend may be outside the calibration’s window." },
	no: { line: "Boost: no", more: "The blend is more likely outside the calibration’s window than inside." },
	noWindow: {
		line: "Boost: unknown",
		more: "No calibration is entered, so there is no window to hold the blend against.",
	},
};

/** In place of a plain yes while the old blend may still be in the lines. */
export const freshWords = {
	line: "Boost: yes, once it has arrived",
	more: "The new blend is inside the calibration’s window, but the old one is in the lines until some miles are driven.",
};

/** A warning in words: what is wrong, how sure, what to do now, and why one is told. */
export interface WarningWords {
	readonly title: string;
	readonly sure: string;
	readonly now: readonly string[];
	readonly why: string;
}

function howLikely({ chance, budget }: { readonly chance: number; readonly budget: number }): string {
	return `${inTwenty(chance)} (${percent(chance)}), accepted are ${exactPercent(budget)}`;
}

/** ANSI Z535.6 keeps NOTICE for what can harm property but nobody's body; these can only harm the engine. */
export const signalWord = "NOTICE";

export function warningWords(warning: Warning, calibrationName: string): WarningWords {
	switch (warning.code) {
		case "lean":
			return {
				title: warning.severity === "likely" ? "Too much ethanol: lean under boost" : "Maybe too much ethanol",
				sure: `Chance of being above the window: ${howLikely(warning)}.`,
				now: [
					"Stay out of boost and off full throttle.",
					"Measure, if you can: “What would settle it?” on the Tank screen says which test is worth it.",
					...(warning.alone
						? ["If your tuner gave you a calibration made for more ethanol, flash it; ask the tuner before you go on."]
						: []),
				],
				why: `Above the window of “${calibrationName}” the injectors deliver too little fuel wherever the engine does not correct itself. Many engines do not carry what they learned at part load into full load (13 of 25 cars screened, CRC E-87-1).`,
			};
		case "knock":
			return {
				title: warning.severity === "likely" ? "Too little ethanol: it may knock" : "Maybe too little ethanol",
				sure: `Chance of being below the window: ${howLikely(warning)}.`,
				now: [
					"Stay out of boost.",
					"Measure, if you can: “What would settle it?” on the Tank screen says which test is worth it.",
					...(warning.alone ? ["If your tuner gave you a calibration made for less ethanol, go back to it."] : []),
				],
				why: `Below the window of “${calibrationName}” the fuel resists knock less than its boost and timing ask for.`,
			};
		case "disagrees":
			return {
				title: "The last reading does not fit the account",
				sure: `Such a reading had less than a 1 in 100 chance.`,
				now: ["Measure again.", "Look through the log for a fill that is missing or mistyped."],
				why: "Either this reading is wrong, or a fill is missing or mistyped, or a pump sold fuel outside its label. The estimate leans on both and is wider for it.",
			};
		case "impossibleLevel":
			return {
				title: "This does not fit in the tank",
				sure: "With what the log says the tank would hold more than it can.",
				now: ["Check the litres or gallons of the last fill, the tank’s capacity and the unit."],
				why: "What was said about the level was left out of the account; the fill itself counts.",
			};
		case "impossibleDistance":
			return {
				title: "Distance and fuel do not go together",
				sure: "No fuel that was in the tank goes with the distance since the last odometer reading.",
				now: [
					"Check the odometer of this entry and of the one before.",
					"Look for a fill that is missing from the log.",
				],
				why: "The odometer was left out of the account; all else in the entry counts.",
			};
	}
}

/** The usual cautions of the trade. */
export const cautions: readonly string[] = [
	"This is an estimate. It knows what you told it and what fuel labels allow, not what is in the tank.",
	"Your tuner’s limits come first, then the car maker’s. Nothing here replaces a measurement.",
	"The law on fuels and emissions applies. In the United States, blends above 15 % ethanol are lawful in flex-fuel vehicles only; other countries have their own rules.",
	"Many engines do not carry learned fuel trims into full load (13 of 25 cars screened in CRC E-87-1), so a lean blend is not corrected for when it matters most.",
	"At the pump: engine off, no smoking, no flames, do not go back into the car while it fills (static), do not top off after the click, and use the phone away from the nozzle.",
];

export const troubleWords = {
	stale: "Another tab runs a newer version of this app: reload this one before you go on.",
	wiped: "The browser found this app’s data damaged and began anew.",
} as const;
