/** Units that a log does not name, told from the values. */
import { type DecimalMark, looksLikeClock, readLogNumber } from "./logNumber";
import { type Role, type Unit, unitsOf } from "./role";

/** What the values of a column have to say. */
export interface Spread {
	readonly least: number;
	readonly most: number;
	readonly median: number;
}

/** Warm engines read 80 to 105 °C or 175 to 220 °F; a higher reading can only be Fahrenheit (common practice). */
const hottestCelsius = 130;

/** The unit of a column of numbers; the usual one of its role where the values say nothing else. */
export function unitFor(role: Role, { least, most, median }: Spread): Unit {
	switch (role) {
		case "coolant":
			return most > hottestCelsius ? "°F" : "°C";
		case "throttle":
		case "load":
			return most <= 2 ? "fraction" : "%";
		case "ethanol":
			return most <= 1 ? "fraction" : "%";
		case "lambda":
		case "commanded":
			return median > 4 ? "AFR" : "lambda";
		case "manifold":
			// Boost comes with negative values in bar or psi; absolute pressure of an idling engine is 25 to 45 kPa.
			return most <= 5 ? "bar" : most > 400 ? "mbar" : least < 0 || median < 20 ? "psi" : "kPa";
		case "short1":
		case "short2":
		case "long1":
		case "long2":
		case "total":
			if (least > 0.5 && most < 1.6) return "factor";
			// SAE J1979 counts trims in steps of 0.78 %: percentages that are never above a third are all zero.
			return most > 1 / 3 || least < -1 / 3 ? "%" : most === 0 && least === 0 ? "%" : "fraction";
		default:
			return unitsOf[role][0];
	}
}

/** A pause between rows of this or more can only be milliseconds (common practice). */
const longestPauseS = 5;

/** The unit of a time column from its first fields, which may be text whatever the header says. */
export function timeUnitOf(fields: readonly string[], named: Unit | null, mark: DecimalMark): Unit {
	const filled = fields.filter((field) => field.trim() !== "");
	if (filled.filter(looksLikeClock).length * 2 > filled.length) return "clock";
	if (named !== null && named !== "clock") return named;
	const times = filled.map((field) => readLogNumber(field, mark)).filter(Number.isFinite);
	if (times.some((time) => time > 1e11)) return "ms";
	const pauses = times
		.slice(1)
		.map((time, i) => time - times[i])
		.filter((pause) => pause > 0)
		.sort((a, b) => a - b);
	const usual = pauses[pauses.length >> 1] ?? 0;
	return usual >= longestPauseS ? "ms" : "s";
}

/** A value in its unit as the core has it: seconds, rpm, km/h, °C, fractions, kPa, lambda. */
export function inCoreUnit(value: number, unit: Unit): number {
	switch (unit) {
		case "ms":
			return value / 1000;
		case "min":
			return value * 60;
		case "mph":
			return value * 1.609344;
		case "m/s":
			return value * 3.6;
		case "°F":
			return (value - 32) / 1.8;
		case "%":
			return value / 100;
		case "factor":
			return value - 1;
		case "bar":
			return value * 100;
		case "psi":
			return value * 6.894757;
		case "mbar":
			return value / 10;
		case "AFR":
			return value / gasolineScale;
		default:
			return value;
	}
}

/** Air–fuel ratio that displays show at lambda 1: they are scaled for gasoline whatever is burned (common practice). */
export const gasolineScale = 14.7;
