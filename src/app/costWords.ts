/** Costs in words, what is missing with them. */
import type { CostSum, StopCost } from "../domain/cost";
import type { DistanceCost, NoDistanceCost } from "../domain/distanceCost";
import type { EthanolCost } from "../domain/ethanolCost";
import type { VolumeUnit } from "../domain/units";
import { date, distanceUnit, fromKm } from "./format";
import { costDistance, distanceMoney, money, unitPrice } from "./money";
import { productName } from "./text";

type Currency = string | undefined;

/** Null where every fill has its price. */
export function unpricedWords({ fills, unpriced }: CostSum): string | null {
	if (unpriced === 0) return null;
	if (unpriced === fills)
		return fills === 1 ? "No price was entered for it." : `No price was entered for any of the ${fills} fills.`;
	return `No price was entered for ${unpriced} of ${fills} fills: they are not in the sum.`;
}

const noExtra = "neither more nor less";

/** "3.20 more", "0.40 less", or "neither more nor less". */
export function extraWords(amount: number, currency: Currency): string {
	if (Math.abs(amount) < 0.005) return noExtra;
	return `${money(Math.abs(amount), currency)} ${amount > 0 ? "more" : "less"}`;
}

/** The same before what it is held against. */
export function comparedWords(amount: number, currency: Currency): string {
	const words = extraWords(amount, currency);
	return words === noExtra ? "as much as" : `about ${words} than`;
}

type Extra = Pick<EthanolCost, "extra" | "least" | "most">;

/** From the least to the most that labels allow. */
export function extraRange({ least, most }: Extra, currency: Currency): string {
	return `from ${extraWords(least, currency)} to ${extraWords(most, currency)}`;
}

/** What the blends cost against their heat bought as gasoline; what no answer stands on is said. */
export function ethanolWords({ ethanol, blends, told }: CostSum, currency: Currency): string {
	if (blends === 0) return "Nothing but gasoline was bought, so no ethanol was paid for apart.";
	if (!ethanol)
		return "What the ethanol costs can be told once a stop has the prices of all it poured, and gasoline was bought before or with it.";
	const stops = told === 1 ? "The blend of one stop" : `The blends of ${told} stops`;
	const left = blends - told;
	const missing =
		left === 0
			? ""
			: ` ${left === 1 ? "One more stop does" : `${left} more stops do`} not tell: a price is missing, or no gasoline was bought yet.`;
	return `${stops} cost ${comparedWords(ethanol.extra, currency)} the same heat bought as gasoline. By what the labels allow: ${extraRange(ethanol, currency)}.${missing}`;
}

/** The gasoline that a blend is held against. */
export function againstWords({ against }: EthanolCost, unit: VolumeUnit, currency: Currency): string {
	const place = against.place === undefined ? "" : `${against.place}, `;
	return `“${productName(against.product)}” at ${unitPrice(against.pricePerLitre, unit, currency)} (${place}${date(against.at)})`;
}

export function stopCostWords({ cost, fills }: StopCost, currency: Currency): string {
	if (cost !== null) return money(cost, currency);
	return fills.length === 1 ? "no price entered" : "a price is missing";
}

export function distanceCostWords(known: DistanceCost, unit: VolumeUnit, currency: Currency): string {
	const how =
		known.by === "clicks"
			? "from one filling to the click to another, 9 in 10"
			: "as far as the tank’s size bounds it, without two fillings to the click, at least and at most";
	const range = `${distanceMoney(known.low, unit, currency)} to ${distanceMoney(known.high, unit, currency)}`;
	return `Over ${distanceWords(known.km, unit)}, ${date(known.from)} to ${date(known.to)}, ${how}: ${range} per ${costDistance(unit).words}.${leftOutWords(known)}`;
}

function leftOutWords({ unpriced, unbelievable }: DistanceCost): string {
	const stretches = (count: number) => (count === 1 ? "One stretch is" : `${count} stretches are`);
	return [
		unpriced > 0 ? ` ${stretches(unpriced)} left out because a price is missing.` : "",
		unbelievable > 0
			? ` ${stretches(unbelievable)} left out because odometer and litres do not fit each other: look for a mistyped odometer in the log.`
			: "",
	].join("");
}

/** Why no cost of a distance can be told, and what would mend it. */
export function noDistanceCostWords({ code, ...rest }: NoDistanceCost): string {
	switch (code) {
		case "noOdometer": {
			const stops = "stops" in rest ? rest.stops : 0;
			return `Two stops with the odometer bound the fuel burned between them; ${stops === 0 ? "no stop has it yet" : "so far one has it"}. Enter it with the next fills.`;
		}
		case "noPrice":
			return "Between no two stops with the odometer every fill has a price. Enter price and odometer with the next fills.";
		case "unbelievable":
			return "Odometer and litres do not fit each other: no car burns that little or that much. Look for a mistyped odometer in the log.";
		case "tooLittle":
			return "What was burned between the stops is not bounded well enough. Fill to the nozzle’s click twice, with the odometer, and it is.";
	}
}

/** A distance in whole km or miles. */
export function distanceWords(km: number, unit: VolumeUnit): string {
	return `${whole.format(fromKm(km, unit))}\u00a0${distanceUnit(unit)}`;
}

const whole = new Intl.NumberFormat(undefined, { maximumFractionDigits: 0 });
const monthFormat = new Intl.DateTimeFormat(undefined, { month: "long", year: "numeric", timeZone: "UTC" });

/** `2026-06` as a person writes it. */
export function monthName(month: string): string {
	return monthFormat.format(Date.parse(`${month}-15T12:00:00Z`));
}
