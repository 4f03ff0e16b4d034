/** Why the number is what it is, in words. */
import type { FillEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import type { Evidence, EvidenceFound, EvidenceWorth } from "../domain/why/evidence";
import type { Origin } from "../domain/why/origins";
import type { Source } from "../domain/why/sources";
import type { Told } from "../domain/why/trace";
import type { ToldStop, Why } from "../domain/why/why";
import { date, exactPercent, exactPercentRange, exactVolume, percent, percentRange, volume } from "./format";
import { tenth, whole } from "./formatters";
import { productName } from "./text";
import type { Way } from "./words/en/why";
import { whyWords } from "./words/why";

/** A range this narrow is told in tenths, or not at all. */
const narrow = 0.03;

/** Narrower or wider by less than this share of the range is the luck of the draw. */
const noticeable = 0.03;

/** A range this narrow, and what becomes of it, is told in tenths. */
const tenthsBelow = 0.1;

/** What is not known, as the beginning of a line. */
export function sourceWords(source: Source): string {
	const words = whyWords();
	switch (source.kind) {
		case "start":
			return source.event ? words.startOf(date(source.event.at)) : words.beforeFirst;
		case "older":
			return words.older(date(source.before.at));
		case "delivered":
			return words.delivered(productName(source.fill.product), dateAndPlace(source.fill));
		case "heel":
			return words.heel(date(source.fills[0].at));
		case "area":
			return words.area(productName(source.product));
		case "capacity":
		case "gauge":
		case "consumption":
			return words[source.kind];
		case "trims":
			return words.trims(exactPercent(source.calibratedFor));
	}
}

/** How the range would change with it known: "5.3 points would become 1.1 points". */
export function knownWords(now: number, known: number): string {
	const { nextToNothing, wouldBecome } = whyWords();
	if (now - known < 0.01 * now) return nextToNothing;
	return wouldBecome(spanWords(now, now), spanWords(known, now));
}

/** The width of a range, in tenths where the range now is narrow. */
export function spanWords(width: number, now: number): string {
	return whyWords().points((now < tenthsBelow ? tenth : whole).format(100 * width));
}

/** The first reason in a sentence; where nothing stands out, that. */
export function reasonWords({ width, sources }: Why): string {
	const words = whyWords();
	if (width < 0.002) return words.known;
	const [first] = sources;
	if (!first) return words.manySmall;
	const [before, after] = [width, first.width].map((span) => spanWords(span, width));
	return words.reason(first.width < width / 2, sourceWords(first.source), after, before);
}

/** What would make the next number better, where this is the weak spot. */
export function remedyWords(source: Source): string {
	const words = whyWords();
	switch (source.kind) {
		case "start":
		case "older":
			return words.measureOnce;
		case "delivered":
		case "area": {
			const product = source.kind === "area" ? source.product : source.fill.product;
			const place = source.kind === "delivered" ? source.fill.place : undefined;
			return words.testPump(productName(product), place);
		}
		case "heel": {
			const ways = missing(source.fills);
			return ways.length === 0 ? words.fillWhenEmpty : words.tellLevel(ways);
		}
		case "capacity":
		case "gauge":
			return words.learnTank;
		case "consumption":
			return words.learnConsumption;
		case "trims":
			return words.learnTrims;
	}
}

/** What was not said of the level at a stop. */
function missing(fills: readonly FillEvent[]): Way[] {
	const ways: readonly (readonly [Way, boolean])[] = [
		["gauge", fills.some(({ gauge }) => gauge !== undefined)],
		["odometer", fills.some(({ odometerKm }) => odometerKm !== undefined)],
		["click", fills.some(({ toClick }) => toClick)],
	];
	return ways.flatMap(([way, said]) => (said ? [] : [way]));
}

/** One stop as an addition: what was left, what went in, what it came to. `now`: the tank as the account has it. */
export function stopLines({ heel, before, after, fills }: ToldStop, unit: VolumeUnit, now: Told | null) {
	const { left, poured } = whyWords();
	return {
		parts: [
			left(volume(heel.median, unit), contentWords(before)),
			...fills.map(({ event, delivered }) =>
				poured(exactVolume(event.litres, unit), productName(event.product), contentWords(delivered)),
			),
		],
		result: contentWords(now ?? after),
	};
}

/** "about 74 % (66–82 %)"; in tenths, and bare, where it is known well. */
export function contentWords({ median, low, high }: Told): string {
	if (high - low < narrow / 10) return exactPercent(median);
	if (high - low < narrow) return `${exactPercent(median)} (${exactPercentRange(low, high)})`;
	return `${percent(median)} (${percentRange(low, high)})`;
}

/** "12 May 2026 at Harbour" */
export function dateAndPlace({ at, place }: Pick<FillEvent, "at" | "place">): string {
	return place === undefined ? date(at) : whyWords().dateAndPlace(date(at), place);
}

export function originName({ fill }: Origin): string {
	const words = whyWords();
	return fill ? words.origin(productName(fill.product), dateAndPlace(fill)) : words.olderOrLess;
}

export function originWords({ litres, share, ethanol, content }: Origin, all: number, unit: VolumeUnit): string {
	const ofEthanol = all > 0 ? percent(ethanol / all) : null;
	return whyWords().originShare(percent(share), volume(litres.median, unit), contentWords(content), ofEthanol);
}

export function evidenceWords(evidence: Evidence): string {
	const words = whyWords();
	const on = date(evidence.event.at);
	switch (evidence.kind) {
		case "gauge":
			return words.gaugeNoted(on);
		case "click":
			return words.clicked(on);
		case "odometer":
			return words.odometerNoted(on);
		case "reading": {
			const { event } = evidence;
			if (event.of === "pump") return words.pumpTest(productName(event.product), event.place, on);
			return event.of === "tank" ? words.tankMeasured(on) : words.trimRead(on);
		}
	}
}

/** Those that make a difference, the others counted. */
export function tellingEvidence({ width, worths }: EvidenceFound) {
	const telling = worths.filter(({ without }) => Math.abs(without - width) > noticeable * Math.max(width, without));
	return { telling, silent: worths.length - telling.length };
}

export function effectWords({ without }: EvidenceWorth, width: number): string {
	const words = whyWords();
	const [then, now] = [spanWords(without, width), spanWords(width, width)];
	return without > width ? words.without(then, now) : words.widens(then, now);
}

export function silentWords(silent: number, telling: number): string {
	return silent === 0 ? "" : whyWords().silent(silent, telling > 0);
}
