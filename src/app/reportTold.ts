/** The tank report as it is told: laid out on the screen and on paper, and drawn as a picture, from the same lines. */
import { countingEvents, type FillEvent } from "../domain/event";
import { modelVersion } from "../domain/modelVersion";
import type { VolumeUnit } from "../domain/units";
import { budgetsOf, verdictOf, warningsFor } from "../domain/warnings";
import type { Why } from "../domain/why/why";
import type { AccountView, Contradiction, TankNow } from "../keeper/view";
import { version } from "../pwa/version";
import { type CardFact, cardFacts, cardTexts } from "./cardFacts";
import { disagreements, likeliest, markWords } from "./doubtWords";
import { eventSentence } from "./eventWords";
import { dateTime, exactPercent, inTwenty, percent, percentRange, volume, volumeRange } from "./format";
import { fillsIn, itemsOf, type LogItem } from "./logView";
import { verdictWords, warningWords } from "./text";
import { blendWords } from "./words/blend";
import { cautionsWords } from "./words/cautions";
import { doubtWords } from "./words/doubt";
import { reportWords } from "./words/report";

export interface ReportSection {
	readonly title: string;
	readonly facts?: readonly CardFact[];
	readonly lines?: readonly string[];
	readonly entries?: readonly ReportEntry[];
	/** After all else in it. */
	readonly close?: string | null;
}

export interface ReportEntry {
	readonly id: string;
	readonly at: string;
	readonly line: string;
	/** What it left behind, and what is odd about it. */
	readonly more: readonly string[];
}

export interface ReportTold {
	readonly title: string;
	readonly made: string;
	readonly verdict: { readonly line: string; readonly more: string };
	readonly sections: readonly ReportSection[];
	readonly plain: string;
}

export interface Reported {
	readonly account: AccountView;
	readonly tank: TankNow;
	/** Null: nothing is odd; undefined: not known yet. */
	readonly contradiction: Contradiction | null | undefined;
	/** Whether something is odd could not be checked: it stays unknown. */
	readonly unchecked: boolean;
	/** Where the fuel comes from; null: not known (yet). */
	readonly why: Why | null;
	readonly unit: VolumeUnit;
	/** ISO 8601 with offset. */
	readonly at: string;
}

export function reportTold(reported: Reported): ReportTold {
	const { account, tank, contradiction, at } = reported;
	const words = reportWords();
	const verdict = verdictOf(tank.estimate, tank.calibration);
	const fresh = tank.last.kind === "fill" && Date.parse(at) - Date.parse(tank.last.at) < 3_600_000;
	const reserved = contradiction?.grave ? doubtWords().verdict : fresh ? blendWords().verdicts.fresh : null;
	return {
		title: words.title(account.car.name),
		made: words.made(dateTime(at), version, modelVersion),
		plain: words.plain,
		verdict: (verdict === "yes" && reserved) || verdictWords(verdict),
		sections: [
			inTank(reported),
			...against(tank),
			warningsIn(reported),
			inForce(reported),
			behind(reported),
			{ title: words.cautionsTitle, lines: cautionsWords().usual },
		],
	};
}

function inTank({ tank: { estimate, level, last }, unit }: Reported): ReportSection {
	const words = reportWords();
	return {
		title: words.estimateTitle,
		facts: [
			{ term: words.ethanol, is: percent(estimate.median) },
			{ term: words.nineInTen, is: percentRange(estimate.low, estimate.high) },
			{ term: words.labels, is: percentRange(estimate.lawfulLow, estimate.lawfulHigh) },
			{ term: words.level, is: words.levelRange(volume(level.median, unit), volumeRange(level.low, level.high, unit)) },
			{ term: words.lastEntry, is: dateTime(last.at) },
		],
	};
}

function against({ estimate: { above, below }, calibration }: TankNow): ReportSection[] {
	if (above === null || below === null) return [];
	const words = reportWords();
	const { lean, knock } = budgetsOf(calibration);
	const chance = (value: number) => words.chance(inTwenty(value), percent(value));
	return [
		{
			title: words.meansTitle,
			facts: [
				{ term: words.inside, is: chance(Math.max(0, 1 - above - below)) },
				{ term: words.above, is: words.accepted(chance(above), exactPercent(lean)) },
				{ term: words.below, is: words.accepted(chance(below), exactPercent(knock)) },
			],
		},
	];
}

function warningsIn({ tank, contradiction, unchecked, unit }: Reported): ReportSection {
	const words = reportWords();
	const { estimate, calibration, surprise } = tank;
	const grave = contradiction?.grave ? contradiction : null;
	const warnings = warningsFor(estimate, calibration, grave ? null : surprise);
	const lines = warnings.map((warning) => {
		const { title, sure, now } = warningWords(warning, calibration?.name ?? "");
		return `${title}. ${sure} ${now.join(" ")}`;
	});
	if (grave) {
		const { untilSettled } = doubtWords();
		const told = [...disagreements(grave, unit), likeliest(grave, unit), untilSettled];
		lines.push(`${words.contradictionTitle}. ${told.join(" ")}`);
	}
	if (contradiction === undefined) lines.push(unchecked ? words.notWeighed : words.weighing);
	return { title: words.warningsTitle, lines: lines.length > 0 ? lines : [words.noWarnings] };
}

function inForce({ account: { events }, tank: { calibration } }: Reported): ReportSection {
	const words = reportWords();
	if (!calibration) return { title: words.noCalibration };
	const flashes = countingEvents(events).filter((event) => event.kind === "calibration");
	const flash = flashes.findLast((event) => event.calibration === calibration.id);
	return {
		title: words.calibrationTitle(calibration.name),
		facts: [...cardFacts(calibration), ...cardTexts(calibration)],
		close: flash ? words.flashedAt(dateTime(flash.at)) : words.fromStart,
	};
}

/** Entries shown before it is known where the fuel comes from, and the most that are. */
const [usualEntries, mostEntries] = [6, 14];

function behind({ account, why, unit }: Reported): ReportSection {
	const words = reportWords();
	const items = itemsOf(account).filter(({ isVoid }) => !isVoid);
	const sharing = new Set(why?.origins.flatMap(({ fill }) => (fill ? [fill.id] : [])));
	const oldest = items.findIndex(({ events }) => events.some(({ id }) => sharing.has(id)));
	const wanted = oldest < 0 ? usualEntries : Math.max(3, items.length - oldest);
	const count = Math.min(items.length, wanted, mostEntries);
	const shown = items.slice(items.length - count).reverse();
	return {
		title: words.behindTitle,
		lines: [words.behindAbout],
		entries: shown.map((item) => entryOf(item, account, why, unit)),
		close: items.length > count ? words.earlier(items.length - count) : null,
	};
}

function entryOf(item: LogItem, { car }: AccountView, why: Why | null, unit: VolumeUnit): ReportEntry {
	const words = reportWords();
	const [event] = item.events;
	const fills = fillsIn(item);
	const name = (id: string) => car.calibrations.find((each) => each.id === id)?.name ?? id;
	const line =
		event.kind === "calibration" ? words.flashed(name(event.calibration)) : eventSentence(event, fills, unit);
	const share = shareOf(fills, why);
	const more = [
		...(item.after && event.kind !== "calibration"
			? [words.after(percent(item.after.median), percentRange(item.after.low, item.after.high))]
			: []),
		...(share >= 0.005 ? [words.share(percent(share))] : []),
		...(item.surprise ? [markWords(item.surprise)] : []),
	];
	return { id: item.id, at: item.at, line, more };
}

function shareOf(fills: readonly FillEvent[], why: Why | null): number {
	const ids = new Set(fills.map(({ id }) => id));
	return (why?.origins ?? []).reduce((sum, { fill, share }) => sum + (fill && ids.has(fill.id) ? share : 0), 0);
}
