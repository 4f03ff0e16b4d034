/** What needs attention among cars, and what first. */
import { verdictOf, warningsFor } from "../domain/warnings";
import type { Fleet, Listed, Watched } from "./fleet";

/** In the order of the list. */
const needs = [
	"outside",
	"doubt",
	"maybe",
	"odd",
	"failed",
	"silent",
	"noWindow",
	"nothing",
	"reckoning",
	"fine",
] as const;
export type Need = (typeof needs)[number];

/** Days without an entry after which a car's number is not to be gone by: common practice, cars are filled weekly. */
export const silentDays = 14;

const dayMs = 86_400_000;

/** Whole days since the last entry; null: there is none. */
export function daysSilent({ lastAt }: Listed, now: number): number | null {
	return lastAt === null ? null : Math.max(0, Math.floor((now - Date.parse(lastAt)) / dayMs));
}

export function needOf(car: Listed, now: number): Need {
	if (car.current === false) return car.failed ? "failed" : "reckoning";
	const { figures, calibration, checked } = car;
	if (!figures) return "nothing";
	const verdict = verdictOf(figures, calibration);
	if (verdict === "no") return "outside";
	if (car.grave && !checked) return "doubt";
	if (verdict === "unsure") return "maybe";
	if (car.surprise && !checked) return "odd";
	if ((daysSilent(car, now) ?? 0) >= silentDays) return "silent";
	return verdict === "noWindow" ? "noWindow" : "fine";
}

/** Over a limit of its calibration, or with entries that go against each other and that nobody has gone through. */
export function isOver({ figures, calibration, surprise, grave, checked }: Listed): boolean {
	if (!figures) return false;
	return warningsFor(figures, calibration, checked ? null : surprise).length > 0 || (grave && !checked);
}

/** The graver need first, then the greater chance of being outside, then the longer silent. */
export function byNeed(now: number): (a: Listed, b: Listed) => number {
	const rank = (car: Listed) => needs.indexOf(needOf(car, now));
	const outside = ({ figures }: Listed) => Math.max(figures?.above ?? 0, figures?.below ?? 0);
	const silent = (car: Listed) => daysSilent(car, now) ?? 0;
	return (a, b) =>
		rank(a) - rank(b) ||
		outside(b) - outside(a) ||
		silent(b) - silent(a) ||
		(a.name < b.name ? -1 : a.name > b.name ? 1 : a.carId < b.carId ? -1 : 1);
}

export function fleetOf(cars: readonly Watched[], now: number): Fleet {
	return { cars: [...cars].sort(byNeed(now)), over: cars.filter(isOver).map(({ carId }) => carId) };
}
