/** A closer look at the last entries: loaded when one of them is odd. */
import { doubtOf, isGrave } from "../domain/doubt/doubt";
import { suspectedFrom } from "../domain/doubt/odd";
import { isTankEvent, type Product } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { type Checkpoint, type Prepared, preparedLog, type Replayed, replayed } from "./accounts";
import type { Contradiction } from "./view";

/** Of the products bought last, so many may have been poured instead of another. */
const products = 4;

/** Null where nothing is odd, or what is odd has no weight. `stored` finds a point on the disk to start from. */
export async function contradictionIn(
	car: Car,
	{ log, checkpoint, recent }: Replayed,
	stored: (log: Prepared) => Promise<Checkpoint[]>,
): Promise<Contradiction | null> {
	const all = log.counting.filter(isTankEvent);
	const entries = all.slice(suspectedFrom(all));
	if (entries.length === 0) return null;
	const position = log.counting.indexOf(entries[0]);
	const left = checkpoint.left.slice(position).filter((said) => said !== null);
	if (!left.some(({ odd }) => odd)) return null;
	const earlier = preparedLog(car, log.counting.slice(0, position));
	const { belief } = (await replayed(earlier, [...recent, ...(await stored(earlier))])).checkpoint.account;
	const doubt = doubtOf(belief, entries, boughtLast(log), car.tank);
	const surprises = entries.flatMap((event, i) => {
		const { surprise } = left[i];
		return surprise ? [{ event, surprise }] : [];
	});
	return surprises.length > 0 || isGrave(doubt) ? { doubt, surprises, entries } : null;
}

/** What was bought last and differs. */
function boughtLast({ counting }: Prepared): Product[] {
	const found = new Map<string, Product>();
	for (const event of [...counting].reverse())
		if (event.kind === "fill" && found.size < products)
			found.set(JSON.stringify([event.product.id, event.product.range]), event.product);
	return [...found.values()];
}
