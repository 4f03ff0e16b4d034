/** A driver at the pumps of a world: pours what was decided as the nozzles let it, and notes it. */
import type { FillEvent, Product } from "../../src/domain/event";
import { type Fraction, fraction } from "../../src/domain/quantity";
import type { Stop, World } from "./world";

/** What is truly in a tank. */
export interface Truth {
	/** L. */
	level: number;
	content: number;
}

/** So many litres of a product as displayed; Infinity: until the click. */
export interface Decided {
	readonly product: Product;
	readonly litres: number;
}

export function tankOf({ capacity, level, content }: World): Truth {
	return { level: level * capacity, content };
}

/** Burns what the drive to the stop takes. */
export function driveTo(truth: Truth, stop: Stop, { capacity }: World): void {
	truth.level = Math.min(truth.level, stop.level * capacity);
}

/** What the gauge shows; null where its needle rests on an end. */
export function gaugeOf(truth: Truth, error: number, { capacity, bias }: World): Fraction | null {
	const shown = truth.level / capacity + bias + error;
	return shown >= 0 && shown <= 1 ? fraction(shown) : null;
}

/** Pours in order until the click, which ends it all; what was poured as the log holds it, and whether the click cut it. */
export function pour(truth: Truth, stop: Stop, world: World, decided: readonly Decided[], gauge: Fraction | null) {
	const fills: FillEvent[] = [];
	let cut = false;
	for (const [i, { product, litres }] of decided.entries()) {
		const room = world.capacity * (1 + stop.clickError) - truth.level;
		const error = 1 + stop.dispenserErrors[i];
		const clicked = litres * error >= room;
		const displayed = clicked ? Math.max(0, room) / error : litres;
		const poured = displayed * error;
		const content = product === world.flexFuel ? stop.flexFuel : stop.gasoline;
		if (poured > 0) truth.content = (truth.level * truth.content + poured * content) / (truth.level + poured);
		truth.level += poured;
		cut = clicked && litres < Infinity;
		if (displayed > 0) {
			fills.push({
				kind: "fill",
				id: fillId(stop, i),
				at: new Date(Date.parse(stop.at) + 1000 * i).toISOString(),
				stop: stop.id,
				place: stop.place,
				product,
				litres: displayed as FillEvent["litres"],
				...(i === 0 && gauge !== null ? { gauge } : {}),
				...(clicked ? { toClick: true } : {}),
			});
		}
		if (clicked) break;
	}
	return { fills, cut };
}

export function fillId(stop: Stop, i: number): string {
	return `${stop.id} fill ${i}`;
}
