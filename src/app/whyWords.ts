/** Why the number is what it is, in words. */
import type { FillEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import type { Evidence, EvidenceFound, EvidenceWorth } from "../domain/why/evidence";
import type { Origin } from "../domain/why/origins";
import type { Source } from "../domain/why/sources";
import type { Told } from "../domain/why/trace";
import type { ToldStop, Why } from "../domain/why/why";
import { date, exactPercent, exactPercentRange, exactVolume, percent, percentRange, volume } from "./format";
import { productName } from "./text";

/** A range this narrow is told in tenths, or not at all. */
const narrow = 0.03;

/** Narrower or wider by less than this share of the range is the luck of the draw. */
const noticeable = 0.03;

/** A range this narrow, and what becomes of it, is told in tenths. */
const tenthsBelow = 0.1;

const tenth = new Intl.NumberFormat(undefined, { minimumFractionDigits: 1, maximumFractionDigits: 1 });
const whole = new Intl.NumberFormat(undefined, { maximumFractionDigits: 0 });

/** What is not known, as the beginning of a line. */
export function sourceWords(source: Source): string {
	switch (source.kind) {
		case "start":
			return source.event
				? `What the tank held at the start, ${date(source.event.at)}`
				: "What the tank held before the first entry";
		case "older":
			return `What the tank held before the stop of ${date(source.before.at)}`;
		case "delivered":
			return `What the “${productName(source.fill.product)}” of ${dateAndPlace(source.fill)} really was`;
		case "heel":
			return `How much was left in the tank before the stop of ${date(source.fills[0].at)}`;
		case "area":
			return `How strong “${productName(source.product)}” is in the area`;
		case "capacity":
			return "How much the tank truly holds";
		case "gauge":
			return "How far the gauge is off";
		case "consumption":
			return "What the car burns";
		case "trims":
			return `How far the fuel trims are off on the calibration for ${exactPercent(source.calibratedFor)}`;
	}
}

/** How the range would change with it known: "5.3 points would become 1.1 points". */
export function knownWords(now: number, known: number): string {
	if (now - known < 0.01 * now) return "next to nothing would go";
	return `${spanWords(now, now)} would become ${spanWords(known, now)}`;
}

/** The width of a range, in tenths where the range now is narrow. */
export function spanWords(width: number, now: number): string {
	return `${(now < tenthsBelow ? tenth : whole).format(100 * width)}\u00a0points`;
}

/** The first reason in a sentence; where nothing stands out, that. */
export function reasonWords({ width, sources }: Why): string {
	if (width < 0.002) return "Next to nothing is left open: what the tank holds is known.";
	const [first] = sources;
	if (!first) return "No single thing stands out: many small ones make the doubt together.";
	const [before, after] = [width, first.width].map((span) => spanWords(span, width));
	const words = sourceWords(first.source);
	const part = first.width < width / 2 ? "Most" : "The largest part";
	return `${part} of the doubt is one question: ${words[0].toLowerCase()}${words.slice(1)}. Were that known exactly, 9 in 10 would span about ${after} instead of ${before}.`;
}

/** What would make the next number better, where this is the weak spot. */
export function remedyWords(source: Source): string {
	switch (source.kind) {
		case "start":
		case "older":
			return "Measure the tank once, by a water test or an analyser: what came before then hardly counts any more.";
		case "delivered":
		case "area": {
			const product = source.kind === "area" ? source.product : source.fill.product;
			const place = source.kind === "delivered" ? source.fill.place : undefined;
			const where = place === undefined ? "at the pump" : `at ${place}`;
			return `Test the “${productName(product)}” ${where} before you fill the next time, and name the place: what a test says is remembered, and it tells of this fill as well. For the tank as it stands a measurement of the tank tells more.`;
		}
		case "heel":
			return `${capitalized(missing(source.fills))}: then the account knows how much was left.`;
		case "capacity":
		case "gauge":
			return "Note the gauge before you fill, and fill to the nozzle’s first click: from both the account learns the tank and the gauge.";
		case "consumption":
			return "Note the odometer at every stop: from one to the next the account learns what the car burns.";
		case "trims":
			return "Take the fuel trims when the tank was just measured, or holds plain gasoline: from then on the account knows how far they are off.";
	}
}

/** What was not said of the level at a stop. */
function missing(fills: readonly FillEvent[]): string {
	const ways = [
		fills.some(({ gauge }) => gauge !== undefined) ? null : "note the gauge before you fill",
		fills.some(({ odometerKm }) => odometerKm !== undefined) ? null : "note the odometer",
		fills.some(({ toClick }) => toClick) ? null : "fill to the nozzle’s first click",
	].filter((way) => way !== null);
	if (ways.length === 0)
		return "fill when the tank is as empty as you dare: the less is left, the less its amount counts";
	return ways.length === 1 ? ways[0] : `${ways.slice(0, -1).join(", ")} and ${ways[ways.length - 1]}`;
}

/** One stop as an addition: what was left, what went in, what it came to. `now`: the tank as the account has it. */
export function stopLines({ heel, before, after, fills }: ToldStop, unit: VolumeUnit, now: Told | null) {
	return {
		parts: [
			`${volume(heel.median, unit)} left, at ${contentWords(before)}`,
			...fills.map(
				({ event, delivered }) =>
					`${exactVolume(event.litres, unit)} of “${productName(event.product)}”, ${contentWords(delivered)}`,
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
	return place === undefined ? date(at) : `${date(at)} at ${place}`;
}

export function originName({ fill }: Origin): string {
	return fill ? `“${productName(fill.product)}” of ${dateAndPlace(fill)}` : "All that is older, or less";
}

export function originWords({ litres, share, ethanol, content }: Origin, all: number, unit: VolumeUnit): string {
	const ofEthanol = all > 0 ? `: ${percent(ethanol / all)} of the ethanol` : "";
	return `${percent(share)} of the fuel, ${volume(litres.median, unit)}, at ${contentWords(content)}${ofEthanol}`;
}

export function evidenceWords(evidence: Evidence): string {
	const { event } = evidence;
	switch (evidence.kind) {
		case "gauge":
			return `The gauge noted on ${date(event.at)}`;
		case "click":
			return `The nozzle’s click on ${date(event.at)}`;
		case "odometer":
			return `The odometer noted on ${date(event.at)}`;
		case "reading": {
			const { event } = evidence;
			const on = `on ${date(event.at)}`;
			if (event.of === "pump") return `The test of “${productName(event.product)}” at ${event.place} ${on}`;
			return event.of === "tank" ? `The measurement of the tank ${on}` : `The fuel trim read ${on}`;
		}
	}
}

/** Those that make a difference, the others counted. */
export function tellingEvidence({ width, worths }: EvidenceFound) {
	const telling = worths.filter(({ without }) => Math.abs(without - width) > noticeable * Math.max(width, without));
	return { telling, silent: worths.length - telling.length };
}

export function effectWords({ without }: EvidenceWorth, width: number): string {
	const would = `without it 9 in 10 would span ${spanWords(without, width)} instead of ${spanWords(width, width)}`;
	return without > width ? would : `${would}: it does not quite fit the rest, and makes the range wider`;
}

export function silentWords(silent: number, telling: number): string {
	if (silent === 0) return "";
	const count = telling > 0 ? `${silent} more` : String(silent);
	return `${count} ${silent === 1 ? "changes" : "change"} next to nothing alone: others say the same, or it is long ago.`;
}

function capitalized(words: string): string {
	return words[0].toUpperCase() + words.slice(1);
}
