/** Data logs in words: which of them fit a reason, a unit, a size. */
import type { Refusal } from "../datalog/refusal";
import { idleSpeed, mostColumns, warmC, windowS } from "../domain/datalog/constants";
import type { Unit } from "../domain/datalog/role";
import type { Reason } from "../domain/datalog/steady";
import type { VolumeUnit } from "../domain/units";
import { distanceUnit, fromKm } from "./format";
import { whole } from "./formatters";
import { dataLogWords } from "./words/dataLog";

/** Why there is nothing to show of a file: by itself, or because the app has a fault. */
export type Trouble = Refusal | "broken";

export function refusalWords(trouble: Trouble): string {
	const { refusals, tooWide } = dataLogWords();
	return trouble === "tooWide" ? tooWide(mostColumns) : refusals[trouble];
}

/** A unit by its sign, or in words where it has none that a driver would know. */
export function unitName(unit: Unit): string {
	const { units } = dataLogWords();
	return Object.hasOwn(units, unit) ? units[unit as keyof typeof units] : unit;
}

/** Why so much of the log says nothing. */
export function reasonWords(reason: Reason, unit: VolumeUnit): string {
	const { reasons, idle, cold, tooShort } = dataLogWords();
	switch (reason) {
		case "idle":
			return idle(speedWords(idleSpeed, unit));
		case "cold":
			return cold(warmC);
		case "tooShort":
			return tooShort(windowS);
		default:
			return reasons[reason];
	}
}

export function wholeWords(count: number): string {
	return whole.format(count);
}

export function rowsWords(count: number): string {
	return dataLogWords().facts.rows(count, whole.format(count));
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
