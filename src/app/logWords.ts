/** The log in words: what happened, what it did, and what it means to take it back. */
import { unknownContents } from "../domain/estimator/constants";
import type { VolumeUnit } from "../domain/units";
import type { Car } from "../domain/vehicle";
import { eventWords } from "./eventWords";
import { inTwenty, percentRange } from "./format";
import { fillsIn, type LogItem, type Outside } from "./logView";

export const surpriseTitle = {
	disagrees: "Does not fit the account",
	impossibleLevel: "Does not fit in the tank",
	impossibleDistance: "Distance does not fit",
} as const;

export function itemWords(item: LogItem, car: Car, unit: VolumeUnit): string {
	const [event] = item.events;
	if (event.kind !== "calibration") return sentence(eventWords(event, fillsIn(item), unit));
	const name = car.calibrations.find(({ id }) => id === event.calibration)?.name ?? event.calibration;
	return `Flashed: ${name}`;
}

/** The kind of entry, as it is spoken of on buttons and in headings. */
export function itemKind({ events: [event] }: LogItem): string {
	if (event.kind === "fill") return "stop";
	if (event.kind === "level") return "gauge note";
	if (event.kind === "calibration") return "flash";
	return event.kind;
}

export function outsideWords({ side, chance }: Outside): string {
	return `${side === "above" ? "Above" : "Below"} the window: ${inTwenty(chance)}`;
}

/** How unlikely a reading was, before it was taken. */
export function unlikelyWords(chance: number): string {
	const one = chance < 1e-4 ? "less than 1 in 10,000" : `about 1 in ${Number((1 / chance).toPrecision(1))}`;
	return `A reading that far out had a chance of ${one}.`;
}

/** What the account loses with it. */
export function voidingWords(item: LogItem, items: readonly LogItem[], car: Car): string {
	const [event] = item.events;
	const earlier = items.slice(0, items.indexOf(item)).filter(({ isVoid }) => !isVoid);
	switch (event.kind) {
		case "fill":
			return "Without it, this fuel counts as never poured: right for a stop that was not made, or that belongs to another car.";
		case "start":
			return earlier.some(({ after }) => after)
				? "Without it, the account goes on from what came before, as if nobody had said what was in the tank here."
				: `Without it, nobody vouches for what the tank held at first: the contents count as unknown, ${percentRange(...unknownContents)}, until fills and readings narrow them down.`;
		case "level":
			return "Without it, the fuel left at that time is less well known, and so is what the next fill did.";
		case "reading":
			return "Without it, the estimate goes by the fills and the other readings alone.";
		case "calibration": {
			const before = earlier.length > 0 ? earlier[earlier.length - 1].calibration : car.calibrations[0];
			return `Without it, the window of “${before?.name ?? event.calibration}” stays in force until the next flash.`;
		}
	}
}

function sentence(words: string): string {
	return words.charAt(0).toLocaleUpperCase() + words.slice(1);
}

const month = new Intl.DateTimeFormat(undefined, { month: "long", year: "numeric" });

export function monthWords(iso: string): string {
	return month.format(Date.parse(iso));
}
