/** A contradiction in words: what disagrees, what may be behind it and how likely, and what settles it. */
import type { Explanation } from "../domain/doubt/explanation";
import type { Surprise } from "../domain/estimator/absorb";
import { rubbishChance } from "../domain/estimator/constants";
import type { FillEvent, Product, ReadingEvent, StartEvent, TankEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import type { Contradiction } from "../keeper/view";
import { date, distanceUnit, exactPercent, exactVolume, percent } from "./format";
import { whole } from "./formatters";
import type { Remedy } from "./remedies";
import { typedOdometer } from "./stopDetails";
import { productName, productRange } from "./text";
import { doubtWords } from "./words/doubt";
import type { Thing } from "./words/en/doubt";

/** What disagrees, a sentence each; at least one. */
export function disagreements({ surprises, doubt }: Contradiction, unit: VolumeUnit): string[] {
	if (surprises.length === 0) return [doubtWords().togetherUnlikely(weightWords(doubt.nothing))];
	return surprises.map(({ event, surprise }) => surpriseWords(event, surprise, unit));
}

function surpriseWords(event: TankEvent, surprise: Surprise, unit: VolumeUnit): string {
	const words = doubtWords();
	switch (surprise.kind) {
		case "disagrees":
			return words.disagrees(entryName(event), oneIn(surprise.chance));
		case "impossibleLevel":
			return words.impossibleLevel(date(event.at));
		case "impossibleDistance":
			return words.impossibleDistance(odometerName(event, unit));
	}
}

/** What the account does with them until it is settled, a sentence for each kind. */
export function treatments({ surprises }: Contradiction): string[] {
	const { nothingLeftOut, treatments } = doubtWords();
	if (surprises.length === 0) return [nothingLeftOut];
	const kinds = new Set(surprises.map(({ surprise }) => surprise.kind));
	return [...kinds].map((kind) => treatments[kind](Math.round(1 / rubbishChance)));
}

/** An entry's own mark among the others, in a few words. */
export function markWords(surprise: Surprise): string {
	const { marks } = doubtWords();
	return surprise.kind === "disagrees" ? marks.disagrees(oneIn(surprise.chance)) : marks[surprise.kind];
}

/** What may have gone wrong, as a sentence. `entries`: the one it is about is among them. */
export function explanationWords(explanation: Explanation, entries: readonly TankEvent[], unit: VolumeUnit): string {
	const words = doubtWords();
	const event = entryIn(entries, explanation.event);
	const on = date(event.at);
	switch (explanation.kind) {
		case "reading":
			return words.isWrong(entryName(event));
		case "gauge":
			return event.kind === "level" ? words.misread(entryName(event)) : words.gaugeMisread(on, gaugeOf(event));
		case "click":
			return words.clickedEarly(on);
		case "odometer":
			return words.mistyped(odometerName(event, unit));
		case "start":
			return words.startWrong(event.kind === "start" ? contentsOf(event) : null);
		case "amount": {
			const fill = fillIn(entries, explanation.event);
			const [really, said] = [explanation.litres, fill.litres].map((litres) => exactVolume(litres, unit));
			return words.otherAmount(really, productName(fill.product), on, said, slipOf(explanation.litres / fill.litres));
		}
		case "product": {
			const { litres, product } = fillIn(entries, explanation.event);
			const [really, said] = apart(explanation.product, product);
			return words.otherProduct(exactVolume(litres, unit), on, really, said);
		}
		case "exchange": {
			const [one, other] = [explanation.event, explanation.other].map((id) => fillIn(entries, id).product);
			return words.exchanged(...apart(one, other), on);
		}
		case "pump":
			return words.outsideLabel(productName(fillIn(entries, explanation.event).product), on);
		case "missing":
			return words.neverEntered(productName(explanation.product), event.kind === "level" ? "level" : "stop", on);
	}
}

/** That all entries are right. */
export function nothingWords(): string {
	return doubtWords().nothingWrong;
}

/** The likeliest of all, with how likely: one sentence for the Tank screen. */
export function likeliest({ doubt, entries }: Contradiction, unit: VolumeUnit): string {
	const { nothing, explanations } = doubt;
	const [first] = explanations;
	if (!first) return doubtWords().noSlipShort;
	const named = nothing > first.weight ? nothingWords() : explanationWords(first.explanation, entries, unit);
	return sureWords(Math.max(nothing, first.weight), named);
}

function sureWords(weight: number, sentence: string): string {
	const { sure, likely } = doubtWords();
	const how = weight >= 0.95 ? "almost" : weight >= 0.8 ? "very" : weight >= 0.5 ? "probably" : "perhaps";
	return likely(sure[how], weightWords(weight), sentence);
}

/** A posterior chance: percent, or one in so many where it is small. */
export function weightWords(weight: number): string {
	if (weight > 0.99) return doubtWords().over99;
	return weight < 0.01 ? oneIn(weight) : percent(weight);
}

function oneIn(chance: number): string {
	const words = doubtWords();
	if (chance < 1e-4) return words.lessThanOneIn(whole.format(10_000));
	return words.oneIn(whole.format(Number((1 / chance).toPrecision(1))));
}

/** What a tap on a remedy's button does. */
export function remedyLabel(remedy: Remedy, explanation: Explanation, unit: VolumeUnit): string {
	const words = doubtWords();
	switch (remedy.kind) {
		case "takeBack":
			return words.takeBack(remedy.part === "entry" ? thing(remedy.event) : remedy.part);
		case "correct":
			if (explanation.kind === "amount") return words.correctAmount(exactVolume(explanation.litres, unit));
			if (explanation.kind === "product") return words.correctProduct(productName(explanation.product));
			return explanation.kind === "exchange" ? words.exchange : words.correct(thing(remedy.event));
		case "enter":
			return words.enterFill;
		case "test":
			return words.testPump(remedy.fill.place);
	}
}

/** What was done, once it is. */
export function takenBackWords({ event, part }: Extract<Remedy, { kind: "takeBack" }>): string {
	const { isVoid, countsWithout } = doubtWords();
	return part === "entry" ? isVoid(thing(event)) : countsWithout(thing(event), part);
}

export function correctedWords(event: TankEvent): string {
	return doubtWords().isCorrected(thing(event));
}

function thing(event: TankEvent): Thing {
	const { kind } = event;
	if (kind === "reading") return event.of === "pump" ? "test" : event.of === "trim" ? "trim" : "reading";
	return kind === "fill" ? "stop" : kind;
}

/** Which measurement would tell them apart, and what its outcome would mean. */
export function measureAgainWords({ entries, surprises }: Contradiction): string {
	const { measureAgain } = doubtWords();
	const measured = entries.some((event) => event.kind === "reading" && event.of !== "pump");
	if (measured) return measureAgain.another;
	const level = surprises.length > 0 && surprises.every(({ surprise }) => surprise.kind !== "disagrees");
	return level ? measureAgain.gauge : measureAgain.tank;
}

/** "The reading of 41 % on 12 May" */
function entryName(event: TankEvent): string {
	const words = doubtWords();
	const on = date(event.at);
	switch (event.kind) {
		case "reading":
			return readingName(event, on);
		case "level":
			return words.levelNote(percent(event.gauge), on);
		case "fill":
			return words.fill(on);
		case "start":
			return words.start(on);
	}
}

/** What was said to be in the tank at a start. */
function contentsOf({ contents }: StartEvent): string {
	if ("range" in contents) return productRange({ id: "", range: contents.range });
	return `${exactPercent(contents.value)} ± ${exactPercent(contents.sd)}`;
}

function readingName(event: ReadingEvent, on: string): string {
	const words = doubtWords();
	const value = exactPercent(event.value);
	switch (event.of) {
		case "tank":
			return words.tankReading(value, on);
		case "trim":
			return words.trimReading(value, on);
		case "pump":
			return words.pumpReading(productName(event.product), event.place, value, on);
	}
}

function odometerName(event: TankEvent, unit: VolumeUnit): string {
	const km = "odometerKm" in event ? event.odometerKm : undefined;
	const shown = km === undefined ? null : `${typedOdometer(km, unit, 0)}\u00a0${distanceUnit(unit)}`;
	return doubtWords().odometer(date(event.at), shown);
}

function gaugeOf(event: TankEvent): string | null {
	return "gauge" in event && event.gauge !== undefined ? percent(event.gauge) : null;
}

/** What slipped, by how much more was poured than was typed. */
function slipOf(factor: number): "point" | "gallons" | "litres" {
	const near = (other: number) => Math.abs(factor / other - 1) < 0.01;
	if (near(10) || near(0.1)) return "point";
	return factor > 1 ? "gallons" : "litres";
}

/** Two products by their names, and where these are the same, by what the labels allow. */
function apart(one: Product, other: Product): [string, string] {
	const named = (product: Product) => {
		const [low, high] = product.range.map(exactPercent);
		return doubtWords().product(productName(product), one.id === other.id ? { low, high } : null);
	};
	return [named(one), named(other)];
}

function entryIn(entries: readonly TankEvent[], id: string): TankEvent {
	const event = entries.find((entry) => entry.id === id);
	if (!event) throw new RangeError(`the entry ${JSON.stringify(id)} is not among those gone through`);
	return event;
}

function fillIn(entries: readonly TankEvent[], id: string): FillEvent {
	const event = entryIn(entries, id);
	if (event.kind !== "fill") throw new RangeError(`the entry ${JSON.stringify(id)} is no fill`);
	return event;
}
