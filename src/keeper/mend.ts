/** What could be added to come back inside the window. */

import { catalogue } from "../domain/catalogue";
import type { Belief } from "../domain/estimator/belief";
import type { Estimate } from "../domain/estimator/estimate";
import { outlookOf } from "../domain/estimator/outlook";
import { bestAmount, insideStretch } from "../domain/estimator/stretch";
import type { LogEvent, Product } from "../domain/event";
import type { Calibration, Tank } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import type { Mend } from "./view";

/** Null where nothing needs mending, or where no product is known that could mend it. */
export function mendFor(
	belief: Belief,
	estimate: Estimate,
	calibration: Calibration | null,
	tank: Tank,
	bought: readonly LogEvent[],
	at: string,
): Mend | null {
	if (!calibration || estimate.above === null || estimate.below === null) return null;
	const budgets = budgetsOf(calibration);
	const lean = estimate.above > budgets.lean;
	if (!lean && !(estimate.below > budgets.knock)) return null;
	const product = lean ? weaker(bought, calibration) : stronger(bought, calibration);
	if (!product) return null;
	const pour = { id: `${at} mend`, at, product, stop: belief.stop?.id ?? `${at} mend` };
	const outlook = outlookOf(belief, pour, tank, calibration.window);
	const stretch = insideStretch(outlook, budgets);
	const best = bestAmount(outlook, budgets);
	const helps = best.inside > 1 - estimate.above - estimate.below + noticeable;
	return { product, between: stretch && [stretch.from, stretch.to], best: helps ? best : null };
}

/** A chance gained that is worth a stop: one dot of twenty. */
const noticeable = 0.05;

/** The last product bought that lies below the window, else gasoline as it is sold anywhere. */
function weaker(bought: readonly LogEvent[], { window }: Calibration): Product | undefined {
	return (
		lastBought(bought, ({ range }) => range[1] < window[0]) ??
		catalogue.find(({ id, range }) => id === "gasoline-to-10" && range[1] < window[0])
	);
}

function stronger(bought: readonly LogEvent[], { window }: Calibration): Product | undefined {
	return lastBought(bought, ({ range }) => range[0] > window[1]);
}

function lastBought(events: readonly LogEvent[], fits: (product: Product) => boolean): Product | undefined {
	for (let i = events.length - 1; i >= 0; i--) {
		const event = events[i];
		if (event.kind === "fill" && fits(event.product)) return event.product;
	}
	return undefined;
}
