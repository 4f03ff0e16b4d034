/** A contradiction in words: what disagrees, what may be behind it and how likely, and what settles it. */
import type { Explanation } from "../domain/doubt/explanation";
import type { Surprise } from "../domain/estimator/absorb";
import { rubbishChance } from "../domain/estimator/constants";
import type { FillEvent, Product, ReadingEvent, StartEvent, TankEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import type { Contradiction } from "../keeper/view";
import { date, distanceUnit, exactPercent, exactVolume, percent } from "./format";
import type { Remedy } from "./remedies";
import { typedOdometer } from "./stopDetails";
import { productName, productRange } from "./text";

const count = new Intl.NumberFormat(undefined, { maximumFractionDigits: 0 });

/** What disagrees, a sentence each; at least one. */
export function disagreements({ surprises, doubt }: Contradiction, unit: VolumeUnit): string[] {
	if (surprises.length === 0)
		return [
			`Taken together, the last entries hardly fit: that nothing is wrong with them has a chance of ${weightWords(doubt.nothing)}.`,
		];
	return surprises.map(({ event, surprise }) => surpriseWords(event, surprise, unit));
}

function surpriseWords(event: TankEvent, surprise: Surprise, unit: VolumeUnit): string {
	switch (surprise.kind) {
		case "disagrees":
			return `${capitalized(entryName(event))} disagrees with the account: a chance of ${oneIn(surprise.chance)}.`;
		case "impossibleLevel":
			return `What was said of the level on ${date(event.at)} does not fit in the tank.`;
		case "impossibleDistance":
			return `${odometerName(event, unit)} does not go with the fuel that was in the tank.`;
	}
}

/** What the account does with them until it is settled, a sentence for each kind. */
export function treatments({ surprises }: Contradiction): string[] {
	if (surprises.length === 0) return ["The account takes every entry as it stands; nothing is left out."];
	return [...new Set(surprises.map(({ surprise }) => treatmentOf[surprise.kind]))];
}

const treatmentOf: Readonly<Record<Surprise["kind"], string>> = {
	disagrees: `The account takes one reading in ${Math.round(1 / rubbishChance)} for rubbish. It still weighs the one that disagrees, but the less it fits, the less it counts.`,
	impossibleLevel: "What was said of the level there is left out of the account; a fill itself counts.",
	impossibleDistance: "That odometer is left out of the account; all else in the entry counts.",
};

/** An entry's own mark among the others, in a few words. */
export function markWords(surprise: Surprise): string {
	switch (surprise.kind) {
		case "disagrees":
			return `disagrees: a chance of ${oneIn(surprise.chance)}`;
		case "impossibleLevel":
			return "does not fit in the tank";
		case "impossibleDistance":
			return "distance does not fit";
	}
}

/** What may have gone wrong, as a sentence. `entries`: the one it is about is among them. */
export function explanationWords(explanation: Explanation, entries: readonly TankEvent[], unit: VolumeUnit): string {
	const event = entryIn(entries, explanation.event);
	const on = date(event.at);
	switch (explanation.kind) {
		case "reading":
			return `${capitalized(entryName(event))} is wrong.`;
		case "gauge":
			return event.kind === "level"
				? `${capitalized(entryName(event))} was misread or mistyped.`
				: `The gauge noted on ${on}${gaugeOf(event)} was misread or mistyped.`;
		case "click":
			return `The nozzle clicked too early on ${on}, or the tank was not filled until it did.`;
		case "odometer":
			return `${odometerName(event, unit)} is mistyped.`;
		case "start":
			return `The tank did not hold at the start what was said${event.kind === "start" ? `, ${contentsOf(event)}` : ""}.`;
		case "amount": {
			const fill = fillIn(entries, explanation.event);
			const [really, said] = [explanation.litres, fill.litres].map((litres) => exactVolume(litres, unit));
			return `You poured ${really} of “${productName(fill.product)}” on ${on}, not ${said}: ${slipWords(explanation.litres / fill.litres)}.`;
		}
		case "product": {
			const { litres, product } = fillIn(entries, explanation.event);
			const [really, said] = apart(explanation.product, product);
			return `The ${exactVolume(litres, unit)} of ${on} were ${really}, not ${said}.`;
		}
		case "exchange": {
			const [one, other] = [explanation.event, explanation.other].map((id) => fillIn(entries, id).product);
			return `The amounts of ${apart(one, other).join(" and ")} on ${on} were exchanged.`;
		}
		case "pump":
			return `What the pump gave as “${productName(fillIn(entries, explanation.event).product)}” on ${on} was far outside its label, or it was another hose.`;
		case "missing":
			return `A fill of “${productName(explanation.product)}” before ${event.kind === "level" ? "the gauge note" : "the stop"} of ${on} was never entered.`;
	}
}

/** That all entries are right. */
export const nothingWords = "Nothing is wrong: all of them are right, and it is chance.";

/** The likeliest of all, with how likely: one sentence for the Tank screen. */
export function likeliest({ doubt, entries }: Contradiction, unit: VolumeUnit): string {
	const { nothing, explanations } = doubt;
	const [first] = explanations;
	if (!first) return "No single slip explains it.";
	const named = nothing > first.weight ? nothingWords : explanationWords(first.explanation, entries, unit);
	return sureWords(Math.max(nothing, first.weight), named);
}

function sureWords(weight: number, sentence: string): string {
	const how = weight >= 0.95 ? "Almost surely" : weight >= 0.8 ? "Very likely" : weight >= 0.5 ? "Probably" : "Perhaps";
	return `${how} (${weightWords(weight)}): ${sentence}`;
}

/** A posterior chance: percent, or one in so many where it is small. */
export function weightWords(weight: number): string {
	if (weight > 0.99) return `over 99\u00a0%`;
	return weight < 0.01 ? oneIn(weight) : percent(weight);
}

function oneIn(chance: number): string {
	return chance < 1e-4 ? "less than 1 in 10,000" : `1 in ${count.format(Number((1 / chance).toPrecision(1)))}`;
}

/** What a tap on a remedy's button does. */
export function remedyLabel(remedy: Remedy, explanation: Explanation, unit: VolumeUnit): string {
	switch (remedy.kind) {
		case "takeBack":
			return `Take the ${remedy.part === "entry" ? noun(remedy.event) : partNames[remedy.part]} back`;
		case "correct":
			if (explanation.kind === "amount") return `Correct it to ${exactVolume(explanation.litres, unit)}`;
			if (explanation.kind === "product") return `Correct it to “${productName(explanation.product)}”`;
			return explanation.kind === "exchange" ? "Exchange the amounts" : `Correct the ${noun(remedy.event)}`;
		case "enter":
			return "Enter that fill";
		case "test":
			return remedy.fill.place === undefined ? "Test the pump" : `Test the pump at ${remedy.fill.place}`;
	}
}

/** What was done, once it is. */
export function takenBackWords({ event, part }: Extract<Remedy, { kind: "takeBack" }>): string {
	if (part === "entry") return `The ${noun(event)} is void.`;
	return `The ${noun(event)} counts without its ${partNames[part]}.`;
}

export function correctedWords(event: TankEvent): string {
	return `The ${noun(event)} is corrected.`;
}

const partNames = { gauge: "gauge", toClick: "click", odometerKm: "odometer" } as const;

function noun(event: TankEvent): string {
	const { kind } = event;
	if (kind === "reading") return event.of === "pump" ? "test" : event.of === "trim" ? "fuel trim" : "reading";
	return kind === "fill" ? "stop" : kind === "level" ? "gauge note" : "start";
}

/** Which measurement would tell them apart, and what its outcome would mean. */
export function measureAgainWords({ entries, surprises }: Contradiction): string {
	const measured = entries.some((event) => event.kind === "reading" && event.of !== "pump");
	if (measured)
		return "Measure the tank again, best with another instrument. If it says the same, the reading is right and something else is wrong; if it says what the account says, the reading was wrong.";
	const level = surprises.length > 0 && surprises.every(({ surprise }) => surprise.kind !== "disagrees");
	return level
		? "Look at the gauge once more, and note it: where it stands now tells a wrong amount from a wrong note."
		: "Measure the tank: its content tells most of these apart.";
}

export const untilSettled =
	"Until it is settled, do not rely on the tank’s number: stay out of boost, and ask your tuner.";

/** "the reading of 41 % on 12 May" */
function entryName(event: TankEvent): string {
	const on = `on ${date(event.at)}`;
	switch (event.kind) {
		case "reading":
			return `${readingName(event)} ${on}`;
		case "level":
			return `the gauge note of ${percent(event.gauge)} ${on}`;
		case "fill":
			return `the fill ${on}`;
		case "start":
			return `the start ${on}`;
	}
}

/** What was said to be in the tank at a start. */
function contentsOf({ contents }: StartEvent): string {
	if ("range" in contents) return productRange({ id: "", range: contents.range });
	return `${exactPercent(contents.value)} ± ${exactPercent(contents.sd)}`;
}

function readingName(event: ReadingEvent): string {
	switch (event.of) {
		case "tank":
			return `the reading of ${exactPercent(event.value)}`;
		case "trim":
			return `the fuel trim of ${exactPercent(event.value)}`;
		case "pump":
			return `the test of “${productName(event.product)}” at ${event.place}, ${exactPercent(event.value)},`;
	}
}

function odometerName(event: TankEvent, unit: VolumeUnit): string {
	const km = "odometerKm" in event ? event.odometerKm : undefined;
	const shown = km === undefined ? "" : `, ${typedOdometer(km, unit, 0)}\u00a0${distanceUnit(unit)},`;
	return `The odometer of ${date(event.at)}${shown}`;
}

function gaugeOf(event: TankEvent): string {
	return "gauge" in event && event.gauge !== undefined ? `, ${percent(event.gauge)} of the tank,` : "";
}

/** What slipped, by how much more was poured than was typed. */
function slipWords(factor: number): string {
	const near = (other: number) => Math.abs(factor / other - 1) < 0.01;
	if (near(10) || near(0.1)) return "the decimal point slipped";
	return factor > 1 ? "gallons were taken for litres" : "litres were taken for gallons";
}

/** Two products by their names, and where these are the same, by what the labels allow. */
function apart(one: Product, other: Product): [string, string] {
	const names = [one, other].map(({ id, range }) => {
		const limits = ` (${exactPercent(range[0])} to ${exactPercent(range[1])})`;
		return `“${productName({ id, range })}”${one.id === other.id ? limits : ""}`;
	});
	return [names[0], names[1]];
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

function capitalized(words: string): string {
	return words.charAt(0).toLocaleUpperCase() + words.slice(1);
}
