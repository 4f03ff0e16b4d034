/** A closer look at the last entries: loaded when one of them is odd. */
import { doubting, isGrave } from "../domain/doubt/doubt";
import { suspectedFrom } from "../domain/doubt/odd";
import type { Belief } from "../domain/estimator/belief";
import { isTankEvent, type Product } from "../domain/event";
import type { Car, Tank } from "../domain/vehicle";
import { type Checkpoint, type Prepared, preparedLog, type Replayed, reached } from "./accounts";
import type { Contradiction } from "./view";

interface Odd extends Pick<Contradiction, "entries" | "surprises"> {
	readonly belief: Belief;
	readonly products: readonly Product[];
	readonly tank: Tank;
}

/** Of the products bought last, so many may have been poured instead of another. */
const mostProducts = 4;

/** What is to be weighed; null where nothing is odd. `stored` finds a point on the disk to start from. */
export async function oddIn(
	car: Car,
	{ log, checkpoint, recent }: Replayed,
	stored: (log: Prepared) => Promise<Checkpoint[]>,
): Promise<Odd | null> {
	const all = log.counting.filter(isTankEvent);
	const entries = all.slice(suspectedFrom(all));
	if (entries.length === 0) return null;
	const position = log.counting.indexOf(entries[0]);
	const left = checkpoint.left.slice(position).filter((said) => said !== null);
	if (!left.some(({ odd }) => odd)) return null;
	const earlier = preparedLog(car, log.counting.slice(0, position));
	const { belief } = (await reached(earlier, recent, stored)).account;
	const surprises = entries.flatMap((event, i) => {
		const { surprise } = left[i];
		return surprise ? [{ event, surprise }] : [];
	});
	return { belief, entries, surprises, products: boughtLast(log), tank: car.tank };
}

/** Null where what is odd has no weight. Lets other questions be answered in between: it may take a phone seconds. */
export async function contradictionOf({
	belief,
	entries,
	surprises,
	products,
	tank,
}: Odd): Promise<Contradiction | null> {
	const weighing = doubting(belief, entries, products, tank);
	for (;;) {
		const step = weighing.next();
		if (step.done) {
			const doubt = step.value;
			const grave = isGrave(doubt);
			return grave || surprises.length > 0 ? { doubt, grave, surprises, entries } : null;
		}
		await new Promise((done) => setTimeout(done));
	}
}

/** What was bought last and differs. */
function boughtLast({ counting }: Prepared): Product[] {
	const found = new Map<string, Product>();
	for (const event of [...counting].reverse())
		if (event.kind === "fill" && found.size < mostProducts)
			found.set(JSON.stringify([event.product.id, event.product.range]), event.product);
	return [...found.values()];
}
