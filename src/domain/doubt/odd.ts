/** Which entries are odd enough to be gone through, and how far back: cheap, for it is asked with every entry. */
import type { Absorbed } from "../estimator/absorb";
import type { TankEvent } from "../event";

/** Stops whose fills are suspected: what came before is too thin in the tank for a later reading to tell. */
const suspectedStops = 2;

/** Of a reading by content, of gauge and click by share of the capacity: an entry that says nothing comes to one. */
const oddLikelihood = 0.5;

/** Index of the first of all `events` to go through: readings before the suspected stops' fills are suspects, too. */
export function suspectedFrom(events: readonly TankEvent[]): number {
	const stops = new Set<string>();
	for (let i = events.length - 1; i >= 0; i--) {
		const event = events[i];
		if (event.kind === "start") return i;
		if (event.kind === "fill" && stops.add(event.stop).size > suspectedStops) return i + 1;
	}
	return 0;
}

/** False only for an entry that will not be called out. */
export function isOdd({ likelihood, surprise }: Pick<Absorbed, "likelihood" | "surprise">): boolean {
	return likelihood < oddLikelihood || surprise !== null;
}
