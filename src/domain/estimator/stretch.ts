/** Reading an outlook: between which amounts the blend is inside, and where the lean limit lies. */
import type { Litres } from "../quantity";

/** Chances at evenly spaced amounts, the first of them nothing. */
export interface Outlook {
	/** Distance between amounts, L. */
	readonly step: Litres;
	/** Chance that each amount goes in before the nozzle clicks. */
	readonly fits: readonly number[];
	/** Chance of being above the window after each amount. */
	readonly above: readonly number[];
	readonly below: readonly number[];
}

/** Budgets for the two sides, as chances. */
export interface Budgets {
	readonly lean: number;
	readonly knock: number;
}

/** An amount that is less likely to fit than this makes the nozzle click: it is none to recommend. */
const likely = 0.5;

/** The amounts that are likely to fit and between which both chances are within budget, L; null where none is: the first such. */
export function insideStretch(
	outlook: Outlook,
	budgets: Budgets,
): { readonly from: Litres; readonly to: Litres } | null {
	const inside = (k: number) =>
		fits(outlook, k) && outlook.above[k] <= budgets.lean && outlook.below[k] <= budgets.knock;
	const count = outlook.above.length;
	let from = 0;
	while (from < count && !inside(from)) from++;
	if (from === count) return null;
	let to = from;
	while (to + 1 < count && inside(to + 1)) to++;
	return { from: (from * outlook.step) as Litres, to: (to * outlook.step) as Litres };
}

/** The amounts between which the lean chance exceeds its budget, L; null where it never does. */
export function leanStretch(outlook: Outlook, budgets: Budgets): { readonly from: Litres; readonly to: Litres } | null {
	const over = (chance: number) => chance > budgets.lean;
	const from = outlook.above.findIndex(over);
	if (from < 0) return null;
	const to = outlook.above.findLastIndex(over);
	return { from: (from * outlook.step) as Litres, to: (to * outlook.step) as Litres };
}

function fits(outlook: Outlook, k: number): boolean {
	return k === 0 || outlook.fits[k] >= likely;
}

/** The amount that is likely to fit after which the blend is most likely inside, the lean budget kept if any amount keeps it. */
export function bestAmount(outlook: Outlook, budgets: Budgets): { readonly amount: Litres; readonly inside: number } {
	const keeps = outlook.above.some((chance, k) => fits(outlook, k) && chance <= budgets.lean);
	let best = { k: 0, inside: -1 };
	for (const [k, above] of outlook.above.entries()) {
		const inside = 1 - above - outlook.below[k];
		if (fits(outlook, k) && inside > best.inside && !(keeps && above > budgets.lean)) best = { k, inside };
	}
	return { amount: (best.k * outlook.step) as Litres, inside: Math.max(0, best.inside) };
}
