/** What a column of a data log can be, and the units it can come in. */

export type Role =
	| "time"
	| "rpm"
	| "speed"
	| "coolant"
	| "throttle"
	| "load"
	| "manifold"
	| "short1"
	| "long1"
	| "short2"
	| "long2"
	/** Short and long term in one number, on cars that have no more. */
	| "total"
	| "lambda"
	| "commanded"
	| "fuelSystem"
	| "ethanol";

export type Unit =
	| "s"
	| "ms"
	| "min"
	/** Text: a time of day, a stopwatch, or a date and a time. */
	| "clock"
	| "rpm"
	| "km/h"
	| "mph"
	| "m/s"
	| "°C"
	| "°F"
	| "%"
	/** 0.05 for five percent. */
	| "fraction"
	/** 1.05 for five percent more. */
	| "factor"
	| "kPa"
	| "bar"
	| "psi"
	| "mbar"
	| "lambda"
	| "AFR"
	/** Open or closed loop, in the codes or letters of SAE J1979 PID 03. */
	| "state";

const trim = ["%", "fraction", "factor"] as const;

/** The units of each role, the usual one first. */
export const unitsOf: Readonly<Record<Role, readonly Unit[]>> = {
	time: ["s", "ms", "min", "clock"],
	rpm: ["rpm"],
	speed: ["km/h", "mph", "m/s"],
	coolant: ["°C", "°F"],
	throttle: ["%", "fraction"],
	load: ["%", "fraction"],
	manifold: ["kPa", "bar", "psi", "mbar"],
	short1: trim,
	long1: trim,
	short2: trim,
	long2: trim,
	total: trim,
	lambda: ["lambda", "AFR"],
	commanded: ["lambda", "AFR"],
	fuelSystem: ["state"],
	ethanol: ["%", "fraction"],
};

export const roles = Object.keys(unitsOf) as readonly Role[];

/** What a column holds; without a unit the values themselves have to tell. */
export interface Column {
	readonly role: Role;
	readonly unit: Unit | null;
}

/** By the place of the column in the file; null: not needed. */
export type Columns = readonly (Column | null)[];

/** Both are needed to tell how much fuel is added: what is learned may be most of it. */
const banks: readonly (readonly Role[])[] = [["short1", "long1"], ["short2", "long2"], ["total"]];

/** Whether these roles tell what the fuel trims add up to. */
export function tellsTrim(has: (role: Role) => boolean): boolean {
	return banks.some((bank) => bank.every(has));
}

/** Groups of roles of which a log lacks at least one: time, the trims, or what tells steady driving from other. */
export type Lack = "time" | "trims" | "driving";

/** What a log lacks for a fuel trim to be read off it. */
export function lacksOf(columns: Columns): Lack[] {
	const has = (role: Role) => columns.some((column) => column?.role === role);
	const driving = (["throttle", "load", "manifold"] as const).some(has) || (has("speed") && has("rpm"));
	return [
		...(has("time") ? [] : (["time"] as const)),
		...(tellsTrim(has) ? [] : (["trims"] as const)),
		...(driving ? [] : (["driving"] as const)),
	];
}

/** Whether anything can be read off a log: a trim, lambda under load, or the content that the car reports. */
export function isOfUse(columns: Columns): boolean {
	const has = (role: Role) => columns.some((column) => column?.role === role);
	const lacks = lacksOf(columns);
	const underLoad = has("lambda") && has("commanded") && !lacks.includes("driving");
	return has("time") && (lacks.length === 0 || underLoad || has("ethanol"));
}
