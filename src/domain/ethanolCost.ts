/**
 * What the ethanol in a blend costs: a litre of it holds a third less heat than a litre of gasoline, so the blend is held
 * against the same heat bought as gasoline. Heat is all that counts here; what an engine makes of it is another matter.
 */
import type { FillEvent, Product } from "./event";
import { heatPerLitre } from "./fuel";
import { daysBetween, type Fraction, type Instant, instant } from "./quantity";

export interface EthanolCost {
	/** What the blend cost beyond its heat bought as gasoline, by the middles of the labels; negative where it was cheaper. */
	readonly extra: number;
	/** The same at the ends that the labels allow. */
	readonly least: number;
	readonly most: number;
	/** What the heat costs, per MJ, by the middles of the labels. */
	readonly perMJ: number;
	readonly gasolinePerMJ: number;
	/** The gasoline it is held against. */
	readonly against: PricedFill;
}

export type PricedFill = FillEvent & { readonly pricePerLitre: number };

/** The strongest fuel that is sold as gasoline, 30 % ± 1 point in Brazil; anything above is a blend or flex fuel. */
const mostInGasoline = 0.31;

/** A price older than this is no longer that of the place (common practice); then the last one paid anywhere counts. */
const priceHoldsDays = 30;

export function isGasoline({ range }: Product): boolean {
	return range[1] <= mostInGasoline;
}

/** Gasoline with its price, and when it was bought. */
interface GasolineBought {
	readonly fill: PricedFill;
	readonly at: Instant;
}

/** All that blends may be held against, in the order of the fills. */
export function gasolineIn(fills: readonly FillEvent[]): GasolineBought[] {
	const priced = fills.filter(isPriced).filter(({ product }) => isGasoline(product));
	return priced.map((fill) => ({ fill, at: instant(fill.at) }));
}

/**
 * The ethanol's cost in the fills of one stop. Null where a price is missing, where no gasoline was bought yet, or where
 * nothing else was.
 */
export function ethanolCostOf(fills: readonly FillEvent[], gasoline: readonly GasolineBought[]): EthanolCost | null {
	const against = gasolineFor(fills, gasoline);
	if (!against || !fills.every(isPriced) || fills.every(({ product }) => isGasoline(product))) return null;
	const cost = fills.reduce((sum, { litres, pricePerLitre }) => sum + litres * pricePerLitre, 0);
	// Fuel of the same label is taken to be the same fuel: gasoline poured beside flex fuel then costs nothing extra.
	const asIn = (share: number, reference: number) => {
		const content = ({ product }: FillEvent) =>
			contentIn(product, sameProduct(product, against.product) ? reference : share);
		const heat = fills.reduce((sum, fill) => sum + fill.litres * heatPerLitre(content(fill)), 0);
		const gasolinePerMJ = against.pricePerLitre / heatPerLitre(content(against));
		return { heat, gasolinePerMJ, extra: cost - heat * gasolinePerMJ };
	};
	const { heat, gasolinePerMJ, extra } = asIn(0.5, 0.5);
	return {
		extra,
		least: asIn(0, 1).extra,
		most: asIn(1, 0).extra,
		perMJ: cost / heat,
		gasolinePerMJ,
		against,
	};
}

/** Priced gasoline of the stop itself, else the last of its place while that price holds, else the last of anywhere. */
function gasolineFor(fills: readonly FillEvent[], gasoline: readonly GasolineBought[]): PricedFill | null {
	const now = instant(fills[fills.length - 1].at);
	const { stop } = fills[0];
	const place = fills.find((fill) => fill.place !== undefined)?.place;
	const holds = (at: Instant) => daysBetween(at, now) <= priceHoldsDays;
	const last = (fits: (bought: GasolineBought) => boolean) =>
		gasoline.findLast((bought) => bought.at <= now && fits(bought))?.fill;
	return (
		last(({ fill }) => fill.stop === stop) ??
		last(({ fill, at }) => place !== undefined && fill.place === place && holds(at)) ??
		last(() => true) ??
		null
	);
}

function isPriced(fill: FillEvent): fill is PricedFill {
	return fill.pricePerLitre !== undefined;
}

function sameProduct(a: Product, b: Product): boolean {
	return a.id === b.id && a.range[0] === b.range[0] && a.range[1] === b.range[1];
}

/** The content at a share of the way through what the label allows. */
function contentIn({ range: [low, high] }: Product, share: number): Fraction {
	return (low + share * (high - low)) as Fraction;
}
