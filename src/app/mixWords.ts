/** The table of mixes in words. */
import type { MixCell, MixTable } from "../domain/plan/mixTable";
import type { VolumeUnit } from "../domain/units";
import type { Calibration } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import { gaugeWords } from "./components/GaugeField";
import { exactPercentRange, exactVolume, inTwenty, percent, percentRange, points, volume } from "./format";
import { mixesWords } from "./words/mixes";

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

export function assumedWords({ content, levelL, capacityL, gauge }: Assumed, unit: VolumeUnit): string {
	const { median, low, high } = content;
	const words = mixesWords();
	const level =
		gauge === null
			? words.levelUnknown(volume(Math.min(levelL, capacityL), unit))
			: words.level(gaugeWords(gauge), volume(gauge * capacityL, unit), volume(capacityL, unit));
	return words.assumed(percent(median), percentRange(low, high), level);
}

export function windowWords(calibration: Calibration | null): string {
	const words = mixesWords();
	if (!calibration) return words.noWindow;
	const { lean, knock } = budgetsOf(calibration);
	return words.window(calibration.name, exactPercentRange(...calibration.window), inTwenty(lean), inTwenty(knock));
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
	const words = mixesWords();
	if (!mix) return words.hardlyFits;
	const judged = mix.judged ? [words.shortVerdicts[mix.judged.verdict]] : [];
	const going = isSure(fits) ? [] : [words.goesIn(inTwenty(fits))];
	return [percentRange(mix.low, mix.high), ...judged, ...going].join(", ");
}

/** What the table finds for filling up; null without a window, or where nothing goes in. */
export function mixFinding({ rows }: MixTable, names: readonly [string, string], unit: VolumeUnit): string | null {
	const told = rows.filter(({ toClick }) => toClick.mix);
	if (!told.some(({ toClick }) => toClick.mix?.judged)) return null;
	const isInside = ({ toClick }: MixTable["rows"][number]) => toClick.mix?.judged?.verdict === "inside";
	const start = told.findIndex(isInside);
	const words = mixesWords();
	if (start < 0) return words.foundNone(...names);
	const end = told.findIndex((row, i) => i > start && !isInside(row));
	const last = told[(end < 0 ? told.length : end) - 1].first;
	const from = exactVolume(told[start].first, unit);
	const amounts = told[start].first === last ? from : words.fromTo(from, exactVolume(last, unit));
	return words.found(...names, amounts);
}
