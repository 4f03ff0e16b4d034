/** Simulated histories with their last stop mistyped in one way, and one reading after it. */
import type { FillEvent, LogEvent, Product } from "../../src/domain/event";
import { fraction, litres } from "../../src/domain/quantity";
import { seedsFor, uniform } from "../../src/domain/random";
import type { Car } from "../../src/domain/vehicle";
import { simulatedCareful } from "../accuracy/simulate";

export type Fault = "tenfold" | "tenth" | "product";

export interface Mistyped {
	readonly car: Car;
	/** As typed, the reading last. */
	readonly events: readonly LogEvent[];
	/** The fill that was mistyped, as it really was; null: none was. */
	readonly really: FillEvent | null;
	readonly fault: Fault | null;
}

const readingSd = 0.025;

/** The n-th history with a fault, or clean. The reading is a good one: rubbish is a contradiction of its own. */
export function mistyped(n: number, fault: Fault | null): Mistyped {
	const { car, events: all, truth } = simulatedCareful(n);
	const seeds = seedsFor(`mistyped ${n}`);
	const fills = all.filter((event): event is FillEvent => event.kind === "fill");
	const last = fills.filter(({ stop }) => stop === fills[fills.length - 1].stop);
	const really = fault === null ? null : last[Math.floor(uniform(seeds) * last.length)];
	const end = all.indexOf(last[last.length - 1]);
	const events = all
		.slice(0, end + 1)
		.map((event) => (event === really && fault ? wrong(really, fault, fills) : event));
	const noise = Math.sqrt(-2 * Math.log(uniform(seeds))) * Math.cos(2 * Math.PI * uniform(seeds));
	const value = fraction(Math.min(1, Math.max(0, truth[end] + readingSd * noise)));
	const at = new Date(Date.parse(all[end].at) + 3.6e6).toISOString();
	events.push({ id: `reading of ${n}`, at, kind: "reading", of: "tank", value, sd: readingSd });
	return { car, events, really, fault };
}

function wrong(fill: FillEvent, fault: Fault, fills: readonly FillEvent[]): FillEvent {
	if (fault === "product") return { ...fill, product: otherThan(fill.product, fills) };
	return { ...fill, litres: litres(fill.litres * (fault === "tenfold" ? 10 : 0.1)) };
}

function otherThan(product: Product, fills: readonly FillEvent[]): Product {
	const other = fills.find((fill) => fill.product.id !== product.id)?.product;
	if (!other) throw new Error("a history of one product has nothing to take for it");
	return other;
}
