/** Odometer and price as a person types them: in miles and per gallon where fuel is counted in gallons. */
import { ok, type Result } from "../domain/result";
import { litresPer, type VolumeUnit } from "../domain/units";
import { distanceUnit, kmPerMile } from "./format";
import { readNumber } from "./numberWords";
import { typedNumber } from "./typedNumber";
import { stopWords } from "./words/stop";

function kmPer(unit: VolumeUnit): number {
	return unit === "L" ? 1 : kmPerMile;
}

/** Most that a log may hold: km, and a price per litre. */
const [mostKm, mostPrice] = [5e6, 1e6];

/** Km; null where nothing was typed; or a sentence for beside the field. */
export function readOdometer(typed: string, unit: VolumeUnit): Result<number | null, string> {
	if (typed.trim() === "") return ok(null);
	const most = Math.floor(mostKm / kmPer(unit));
	const limits = stopWords().odometerLimits(String(most), distanceUnit(unit));
	const read = readNumber(typed, 0, most, { example: "84210", limits });
	return read.ok ? ok(read.value * kmPer(unit)) : read;
}

/** Per litre; null where nothing was typed; or a sentence for beside the field. */
export function readPrice(typed: string, unit: VolumeUnit): Result<number | null, string> {
	if (typed.trim() === "") return ok(null);
	const read = readNumber(typed, 0.001, mostPrice, {
		example: "3.459",
		limits: stopWords().priceLimits(typedNumber(0.001)),
	});
	return read.ok ? ok(read.value / litresPer[unit]) : read;
}

export function typedOdometer(km: number | undefined, unit: VolumeUnit, digits = 1): string {
	return km === undefined ? "" : rounded(km / kmPer(unit), digits);
}

export function typedPrice(perLitre: number | undefined, unit: VolumeUnit): string {
	return perLitre === undefined ? "" : rounded(perLitre * litresPer[unit], 4);
}

/** What was typed for one unit, for another; what is no number stays as it was typed. */
export function odometerIn(typed: string, from: VolumeUnit, to: VolumeUnit): string {
	const read = readOdometer(typed, from);
	return read.ok && read.value !== null && kmPer(from) !== kmPer(to) ? typedOdometer(read.value, to) : typed;
}

export function priceIn(typed: string, from: VolumeUnit, to: VolumeUnit): string {
	const read = readPrice(typed, from);
	return read.ok && read.value !== null && from !== to ? typedPrice(read.value, to) : typed;
}

/** Whether one of them can't be saved. */
export function detailsFault(
	{ odometer, pours }: { readonly odometer: string; readonly pours: readonly { readonly price: string }[] },
	unit: VolumeUnit,
): boolean {
	return !readOdometer(odometer, unit).ok || pours.some(({ price }) => !readPrice(price, unit).ok);
}

function rounded(value: number, digits: number): string {
	return typedNumber(Number(value.toFixed(digits)));
}
