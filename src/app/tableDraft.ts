/** What a table of mixes is asked for, kept while one looks elsewhere. */
import type { LogEvent, Product } from "../domain/event";
import { type Fraction, litres } from "../domain/quantity";
import type { PlanAsk } from "../keeper/view";
import { isoWithOffset } from "./app";
import { placesIn, productAfter, usualProduct } from "./fillChoices";

export interface TableDraft {
	readonly first: Product;
	readonly second: Product;
	/** Null: a place nobody has been to. */
	readonly place: string | null;
	/** As seen now; null: nobody looked. */
	readonly gauge: number | null;
	/** When the gauge was looked at, ms. */
	readonly lookedAt: number;
}

/** After so long the gauge may stand elsewhere. */
const gaugeHoldsMs = 3 * 3_600_000;

/** The last two products in the order they were poured, where they were bought last. */
export function newTable(events: readonly LogEvent[]): TableDraft {
	const first = usualProduct(events);
	const second = productAfter(events, first);
	return { first, second, place: placesIn(events)[0] ?? null, gauge: null, lookedAt: 0 };
}

/** A stored draft, if that is what it is; a look at the gauge that is too long ago is dropped. */
export function readTable(raw: unknown, now: number): TableDraft | null {
	const draft = raw as Partial<TableDraft> | null | undefined;
	if (!isProduct(draft?.first) || !isProduct(draft.second)) return null;
	const { first, second, place = null, gauge = null, lookedAt = 0 } = draft;
	const fresh = now - lookedAt <= gaugeHoldsMs && now >= lookedAt;
	return { first, second, place, gauge: fresh ? gauge : null, lookedAt };
}

function isProduct(product: Product | undefined): product is Product {
	return typeof product?.id === "string" && Array.isArray(product.range);
}

/** The draws hang on the stop's id: always the same, so that the table stays as it is while nothing changes. */
const stop = "table of mixes";

export function tableAsk({ first, second, place, gauge }: TableDraft, now: number): PlanAsk {
	return {
		visit: {
			stop,
			at: isoWithOffset(now),
			...(place === null ? {} : { place }),
			...(gauge === null ? {} : { gauge: gauge as Fraction }),
		},
		poured: [],
		instead: [],
		offers: [{ product: first }, { product: second }],
		fullness: { kind: "click" },
		targetCalibration: null,
		handling: { step: litres(0.1), minimum: litres(0) },
		ids: [`${stop} 1`, `${stop} 2`],
	};
}
