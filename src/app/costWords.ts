/** Costs in words, what is missing with them. */
import type { CostSum, StopCost } from "../domain/cost";
import type { DistanceCost, NoDistanceCost } from "../domain/distanceCost";
import type { EthanolCost } from "../domain/ethanolCost";
import type { VolumeUnit } from "../domain/units";
import { date, distanceUnit, fromKm } from "./format";
import { dates, whole } from "./formatters";
import { costDistance, distanceMoney, money, unitPrice } from "./money";
import { productName } from "./text";
import { costsWords } from "./words/costs";

type Currency = string | undefined;

/** Null where every fill has its price. */
export function unpricedWords({ fills, unpriced }: CostSum): string | null {
	if (unpriced === 0) return null;
	const words = costsWords();
	if (unpriced === fills) return fills === 1 ? words.noPriceOfOne : words.noPriceOfAny(fills);
	return words.noPriceOfSome(unpriced, fills);
}

/** Too little to be told. */
function isNothing(amount: number): boolean {
	return Math.abs(amount) < 0.005;
}

/** "3.20 more", "0.40 less", or "neither more nor less". */
export function extraWords(amount: number, currency: Currency): string {
	const words = costsWords();
	if (isNothing(amount)) return words.same;
	return (amount > 0 ? words.more : words.less)(money(Math.abs(amount), currency));
}

/** The same before what it is held against. */
export function comparedWords(amount: number, currency: Currency): string {
	const words = costsWords();
	if (isNothing(amount)) return words.asMuchAs;
	return (amount > 0 ? words.moreThan : words.lessThan)(money(Math.abs(amount), currency));
}

type Extra = Pick<EthanolCost, "extra" | "least" | "most">;

/** From the least to the most that labels allow. */
export function extraRange({ least, most }: Extra, currency: Currency): string {
	return costsWords().range(extraWords(least, currency), extraWords(most, currency));
}

/** What the blends cost against their heat bought as gasoline; what no answer stands on is said. */
export function ethanolWords({ ethanol, blends, told }: CostSum, currency: Currency): string {
	const words = costsWords();
	if (blends === 0) return words.noBlends;
	if (!ethanol) return words.noEthanol;
	const compared = words.blends(told, comparedWords(ethanol.extra, currency), extraRange(ethanol, currency));
	const left = blends - told;
	return left === 0 ? compared : `${compared} ${words.untold(left)}`;
}

/** The gasoline that a blend is held against. */
export function againstWords({ against }: EthanolCost, unit: VolumeUnit, currency: Currency): string {
	const { product, pricePerLitre, place, at } = against;
	return costsWords().against(productName(product), unitPrice(pricePerLitre, unit, currency), place, date(at));
}

export function stopCostWords({ cost, fills }: StopCost, currency: Currency): string {
	if (cost !== null) return money(cost, currency);
	return fills.length === 1 ? costsWords().noPrice : costsWords().priceMissing;
}

export function distanceCostWords(known: DistanceCost, unit: VolumeUnit, currency: Currency): string {
	const words = costsWords();
	const { unpriced, unbelievable } = known;
	const cost = (known.by === "clicks" ? words.byClicks : words.byBounds)(
		distanceWords(known.km, unit),
		date(known.from),
		date(known.to),
		distanceMoney(known.low, unit, currency),
		distanceMoney(known.high, unit, currency),
		costDistance(unit).words,
	);
	return [
		cost,
		...(unpriced > 0 ? [words.leftOutUnpriced(unpriced)] : []),
		...(unbelievable > 0 ? [words.leftOutUnbelievable(unbelievable)] : []),
	].join(" ");
}

/** Why no cost of a distance can be told, and what would mend it. */
export function noDistanceCostWords({ code, ...rest }: NoDistanceCost): string {
	const words = costsWords();
	switch (code) {
		case "noOdometer":
			return words.noOdometer("stops" in rest ? rest.stops : 0);
		case "noPrice":
			return words.noPricedStretch;
		case "unbelievable":
			return words.unbelievable;
		case "tooLittle":
			return words.tooLittle;
	}
}

/** A distance in whole km or miles. */
export function distanceWords(km: number, unit: VolumeUnit): string {
	return `${whole.format(fromKm(km, unit))}\u00a0${distanceUnit(unit)}`;
}

const monthFormat = dates({ month: "long", year: "numeric", timeZone: "UTC" });

/** `2026-06` as a person writes it. */
export function monthName(month: string): string {
	return monthFormat.format(Date.parse(`${month}-15T12:00:00Z`));
}
