/** The log in words: what happened, what it did, and what it means to take it back. */
import { unknownContents } from "../domain/estimator/constants";
import type { VolumeUnit } from "../domain/units";
import type { Car } from "../domain/vehicle";
import { eventSentence } from "./eventWords";
import { inTwenty, percentRange } from "./format";
import { dates } from "./formatters";
import { fillsIn, type LogItem, type Outside, type ToldEvent } from "./logView";
import { logScreenWords } from "./words/log";

export function itemWords(item: LogItem, car: Car, unit: VolumeUnit): string {
	const [event] = item.events;
	if (event.kind !== "calibration") return eventSentence(event, fillsIn(item), unit);
	const name = car.calibrations.find(({ id }) => id === event.calibration)?.name ?? event.calibration;
	return logScreenWords().flashed(name);
}

/** The kind of entry, as it is spoken of on buttons and in headings. */
export function itemKind({ events: [event] }: LogItem): ToldEvent["kind"] {
	return event.kind;
}

export function outsideWords({ side, chance }: Outside): string {
	return logScreenWords().outside(side, inTwenty(chance));
}

/** How unlikely a reading was, before it was taken. */
export function unlikelyWords(chance: number): string {
	const words = logScreenWords();
	return chance < 1e-4 ? words.veryUnlikely : words.unlikely(String(Number((1 / chance).toPrecision(1))));
}

/** What the account loses with it. */
export function voidingWords(item: LogItem, items: readonly LogItem[], car: Car): string {
	const [event] = item.events;
	const { without } = logScreenWords();
	const earlier = items.slice(0, items.indexOf(item)).filter(({ isVoid }) => !isVoid);
	switch (event.kind) {
		case "fill":
			return without.fill;
		case "start":
			return earlier.some(({ after }) => after)
				? without.laterStart
				: without.firstStart(percentRange(...unknownContents));
		case "level":
			return without.level;
		case "reading":
			return without.reading;
		case "calibration": {
			const before = earlier.length > 0 ? earlier[earlier.length - 1].calibration : car.calibrations[0];
			return without.calibration(before?.name ?? event.calibration);
		}
	}
}

const month = dates({ month: "long", year: "numeric" });

export function monthWords(iso: string): string {
	return month.format(Date.parse(iso));
}
