/** Events in words. */
import type { FillEvent, TankEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import { exactPercent, exactVolume, percent } from "./format";
import { productName, productRange } from "./text";
import { eventsWords } from "./words/events";
import { methodsWords } from "./words/methods";

/** One event in a line; the fills of its stop are told together. */
export function eventWords(event: TankEvent, together: readonly FillEvent[], unit: VolumeUnit): string {
	const words = eventsWords();
	switch (event.kind) {
		case "fill":
			return stopWords(together.length > 0 ? together : [event], unit);
		case "start": {
			const { contents } = event;
			return words.began(
				"range" in contents
					? productRange({ id: "", range: contents.range })
					: `${exactPercent(contents.value)} ± ${exactPercent(contents.sd)}`,
			);
		}
		case "level":
			return words.gaugeNoted(percent(event.gauge));
		case "reading":
			return readingWords(event);
	}
}

/** The same where it stands alone. */
export function eventSentence(event: TankEvent, together: readonly FillEvent[], unit: VolumeUnit): string {
	return eventsWords().alone(eventWords(event, together, unit));
}

function readingWords(event: Extract<TankEvent, { kind: "reading" }>): string {
	const words = eventsWords();
	const value = exactPercent(event.value);
	const by = event.method && methodsWords().told(event.method);
	switch (event.of) {
		case "tank":
			return words.tankMeasured(value, by);
		case "pump":
			return words.pumpMeasured(productName(event.product), event.place, value, by);
		case "trim":
			return words.trim(value, exactPercent(event.calibratedFor), by);
	}
}

function stopWords(fills: readonly FillEvent[], unit: VolumeUnit): string {
	const words = eventsWords();
	const poured = fills.map((fill) => words.poured(exactVolume(fill.litres, unit), productName(fill.product)));
	const place = fills.find((fill) => fill.place !== undefined)?.place;
	return words.stop(poured, place, fills.at(-1)?.toClick === true);
}
