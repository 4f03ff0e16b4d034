/** Data logs in words. */

import type { Skip } from "../datalog/readLog";
import type { Refusal } from "../datalog/refusal";
import { idleSpeed, mostColumns, warmC, windowS } from "../domain/datalog/constants";
import type { Lack, Role, Unit } from "../domain/datalog/role";
import type { Reason } from "../domain/datalog/steady";
import type { Agreement } from "../domain/datalog/underLoad";
import type { VolumeUnit } from "../domain/units";
import { distanceUnit, fromKm } from "./format";

/** Why there is nothing to show of a file: by itself, or because the app has a fault. */
export type Trouble = Refusal | "broken";

export const refusalWords: Readonly<Record<Trouble, string>> = {
	empty: "There is nothing in this file: export the log once more, and choose that.",
	picture: "This is a picture: choose the file that your logger saves as CSV or text.",
	pdf: "This is a PDF, which holds pages and no rows: let your logger save the log as CSV.",
	packed: "This is a packed file or a spreadsheet: unpack it, or save the sheet as CSV, and choose that.",
	binary: "This file is no text, perhaps your logger’s own format: let it save the log as CSV.",
	json: "This is JSON, which has no columns: let your logger save the log as CSV. A backup of Heeltap is opened under Car.",
	markup: "This is a web page or XML, which has no columns: let your logger save the log as CSV.",
	oneColumn:
		"Only one column was found at the beginning of this file: let your logger separate the columns by comma, semicolon or tab.",
	tooWide: `More than ${mostColumns} columns were found at the beginning of this file: choose the log itself, as your logger saves it.`,
	noNumbers:
		"No rows of numbers were found at the beginning of this file: choose the log itself, with one row for each moment.",
	unreadable:
		"The phone would not give the file to its end: copy it to the phone’s own storage, and choose it from there.",
	broken: "The app could not read it. Reload the app and try again.",
};

export const roleNames: Readonly<Record<Role, string>> = {
	time: "Time",
	rpm: "Engine speed",
	speed: "Vehicle speed",
	coolant: "Coolant temperature",
	throttle: "Throttle",
	load: "Engine load",
	manifold: "Manifold pressure",
	short1: "Bank 1: short-term fuel trim",
	long1: "Bank 1: long-term fuel trim",
	short2: "Bank 2: short-term fuel trim",
	long2: "Bank 2: long-term fuel trim",
	total: "Total fuel trim, short and long term in one",
	lambda: "Measured lambda or air–fuel ratio",
	commanded: "Commanded lambda or air–fuel ratio",
	fuelSystem: "Open or closed loop",
	ethanol: "Ethanol content as the car reports it",
};

export const unitNames: Readonly<Record<Unit, string>> = {
	s: "seconds",
	ms: "milliseconds",
	min: "minutes",
	clock: "time of day",
	rpm: "rpm",
	"km/h": "km/h",
	mph: "mph",
	"m/s": "m/s",
	"°C": "°C",
	"°F": "°F",
	"%": "%",
	fraction: "a share (0.05 for 5 %)",
	factor: "a factor (1.05 for +5 %)",
	kPa: "kPa",
	bar: "bar",
	psi: "psi",
	mbar: "mbar",
	lambda: "lambda",
	AFR: "air–fuel ratio (14.7 at lambda 1)",
	state: "as logged",
};

export const lackWords: Readonly<Record<Lack, string>> = {
	time: "the time",
	trims: "short-term and long-term fuel trim of one bank",
	driving: "throttle, engine load or manifold pressure",
};

export const skipWords: Readonly<Record<Skip, string>> = {
	noTime: "without a time that can be read",
	backwards: "whose time runs backwards",
	noValues: "without any number",
	otherWidth: "with more or fewer fields than the header",
};

/** Why so much of the log says nothing. */
export function reasonWords(reason: Reason, unit: VolumeUnit): string {
	return reason === "idle" ? `idle, or slower than ${speedWords(idleSpeed, unit)}` : otherReasons[reason];
}

const otherReasons: Readonly<Record<Exclude<Reason, "idle">, string>> = {
	missing: "not all was logged",
	cold: `the engine was below ${warmC}\u00a0°C`,
	openLoop: "open loop",
	tooShort: `less than ${windowS}\u00a0s at a time`,
	unsteady: "foot, load or speed were moving",
	frozen: "the trims stood at zero, as when they are switched off",
	lambdaOff: "lambda was not at 1, as in open loop",
	unsettled: "the trims were still moving",
};

/** What to do about a log without a steady stretch, by what was nearest to one. */
export const adviceWords: Readonly<Record<Reason, string>> = {
	missing: "Log all of it over the same time: trims, coolant, speed, and throttle or load.",
	cold: "Log once the engine is warm.",
	idle: "Log on the road: at idle the trims are other ones.",
	openLoop: "Log at part load, where the loop is closed.",
	tooShort: "Keep at a steady speed for half a minute at a time.",
	unsteady: "Keep at a steady speed on a level road for half a minute at a time.",
	frozen: "The trims were not at work: log at part load with a warm engine.",
	lambdaOff:
		"If lambda is logged as an air–fuel ratio that is not 14.7 at lambda 1, leave its column out; else log at part load.",
	unsettled: "Drive on for some minutes, until the trims stand still.",
};

export const agreementWords: Readonly<Record<Agreement, string>> = {
	agree:
		"It says the same as the trims, within what both can tell: so this car does not seem to carry its trims into open loop, where lambda then shows what nothing corrects.",
	carried:
		"Under load the mixture is about as commanded, although the trims correct. So this car seems to carry its trims into open loop, and lambda under load says nothing about the fuel. The trim is the reading to save.",
	differ:
		"It does not go with the trims. A car that carries a part of its trims, fuel pressure that drops, air that is metered otherwise at high flow, or a sensor may be the cause. Let your tuner look before you trust either; save one at most.",
	alone:
		"There is no trim to hold it against. It is a reading of the fuel only if this car does not carry its trims into open loop: otherwise it shows just what the trims leave over.",
};

const whole = new Intl.NumberFormat(undefined, { maximumFractionDigits: 0 });

export function wholeWords(count: number): string {
	return whole.format(count);
}

export function rowsWords(count: number): string {
	return `${whole.format(count)} ${count === 1 ? "row" : "rows"}`;
}

/** Time as a person says it: seconds, then minutes, then hours. */
export function durationWords(seconds: number): string {
	const whole = Math.round(seconds);
	if (whole < 120) return `${whole}\u00a0s`;
	const minutes = Math.round(whole / 60);
	return minutes < 120 ? `${minutes}\u00a0min` : `${Math.floor(minutes / 60)}\u00a0h ${minutes % 60}\u00a0min`;
}

/** A speed in km/h as the driver counts it: in miles where fuel is counted in gallons. */
function speedWords(kmh: number, unit: VolumeUnit): string {
	return `${whole.format(fromKm(kmh, unit))}\u00a0${distanceUnit(unit) === "km" ? "km/h" : "mph"}`;
}

/** A place in the log. */
export function clockWords(seconds: number): string {
	const part = (value: number) => String(Math.floor(value)).padStart(2, "0");
	const [hours, minutes] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60];
	return hours > 0 ? `${hours}:${part(minutes)}:${part(seconds % 60)}` : `${minutes}:${part(seconds % 60)}`;
}
