/** The table of mixes in words. */
import type { MixCell, MixTable, MixVerdict } from "../domain/plan/mixTable";
import type { VolumeUnit } from "../domain/units";
import type { Calibration } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import { gaugeWords } from "./components/GaugeField";
import { exactPercentRange, exactVolume, inTwenty, percent, percentRange, points, volume } from "./format";

/** What the table takes the tank to be. */
export interface Assumed {
	readonly content: { readonly median: number; readonly low: number; readonly high: number };
	/** As the last entry left it, L. */
	readonly levelL: number;
	readonly capacityL: number;
	/** As seen now; null: nobody looked. */
	readonly gauge: number | null;
}

/** Below this chance of going in before the click a cell is marked. */
const surely = 0.9;

export const mixCaution =
	"An estimate for this tank at this moment only: it stands on what was entered and on what labels allow. It is no measurement, and your tuner’s limits come first.";

export const verdictNames: Readonly<Record<MixVerdict, string>> = {
	inside: "inside the window as surely as asked",
	lean: "maybe too much ethanol: lean",
	knock: "maybe too little ethanol: knock",
};

export const hardlyFits = "hardly fits";
export const mayClick = "the nozzle may click before";

export function assumedWords({ content, levelL, capacityL, gauge }: Assumed, unit: VolumeUnit): string {
	const { median, low, high } = content;
	const level =
		gauge === null
			? `anything from empty to ${volume(Math.min(levelL, capacityL), unit)}, for nobody looked at the gauge`
			: `gauge ${gaugeWords(gauge)}, about ${volume(gauge * capacityL, unit)} of ${volume(capacityL, unit)}`;
	return `In the tank: about ${percent(median)} ethanol, 9 in 10: ${percentRange(low, high)}. Level: ${level}.`;
}

export function windowWords(calibration: Calibration | null): string {
	if (!calibration) return "No calibration is entered, so no mix is held against a window.";
	const { lean, knock } = budgetsOf(calibration);
	return `Window of “${calibration.name}”: ${exactPercentRange(...calibration.window)}. Accepted: too much ${inTwenty(lean)}, too little ${inTwenty(knock)}.`;
}

/** A cell's range in points, for a narrow column; a star where the nozzle may click before. */
export function cellWords({ mix, fits }: MixCell): string {
	if (!mix) return "–";
	const [low, high] = [points(mix.low), points(mix.high)];
	return `${low === high ? low : `${low}–${high}`}${isSure(fits) ? "" : "*"}`;
}

export function isSure(fits: number): boolean {
	return fits >= surely;
}

/** The same for whoever hears it. */
export function cellSentence({ mix, fits }: MixCell): string {
	if (!mix) return hardlyFits;
	const judged = mix.judged ? `, ${shortVerdict[mix.judged.verdict]}` : "";
	return `${percentRange(mix.low, mix.high)}${judged}${isSure(fits) ? "" : `, goes in ${inTwenty(fits)}`}`;
}

const shortVerdict: Readonly<Record<MixVerdict, string>> = { inside: "inside", lean: "lean", knock: "knock" };

/** What the table finds for filling up; null without a window, or where nothing goes in. */
export function mixFinding({ rows }: MixTable, names: readonly [string, string], unit: VolumeUnit): string | null {
	const told = rows.filter(({ toClick }) => toClick.mix);
	if (!told.some(({ toClick }) => toClick.mix?.judged)) return null;
	const isInside = ({ toClick }: MixTable["rows"][number]) => toClick.mix?.judged?.verdict === "inside";
	const start = told.findIndex(isInside);
	const filled = `Filled up with “${names[1]}”`;
	if (start < 0)
		return `${filled}, no amount of “${names[0]}” in this table ends inside the window as surely as asked.`;
	const end = told.findIndex((row, i) => i > start && !isInside(row));
	const last = told[(end < 0 ? told.length : end) - 1].first;
	const from = exactVolume(told[start].first, unit);
	const amounts = told[start].first === last ? from : `${from} to ${exactVolume(last, unit)}`;
	return `${filled}, ${amounts} of “${names[0]}” before it ends inside the window as surely as asked.`;
}
