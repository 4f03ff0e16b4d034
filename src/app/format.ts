/** Numbers and times for reading, rounded to what is known. */
import type { VolumeUnit } from "../domain/units";
import { fromLitres } from "../domain/units";
import { dates, numbers, tenth, whole } from "./formatters";
import { formatWords } from "./words/format";

const typed = numbers({ maximumFractionDigits: 3 });

/** Number and unit stay on one line. */
const space = "\u00a0";

/** A content in whole percent, without the sign. */
export function points(content: number): string {
	return whole.format(Math.round(content * 100));
}

export function percent(content: number): string {
	return `${points(content)}${space}%`;
}

/** A label's limit: tenths only where it has some. */
export function exactPercent(content: number): string {
	return `${typed.format(Math.round(content * 1000) / 10)}${space}%`;
}

export function exactPercentRange(low: number, high: number): string {
	return `${typed.format(Math.round(low * 1000) / 10)}–${exactPercent(high)}`;
}

export function percentRange(low: number, high: number): string {
	return `${points(low)}–${points(high)}${space}%`;
}

export function volume(litres: number, unit: VolumeUnit): string {
	return `${tenth.format(fromLitres(litres, unit))}${space}${unit}`;
}

export function volumeRange(from: number, to: number, unit: VolumeUnit): string {
	return `${tenth.format(fromLitres(from, unit))}–${volume(to, unit)}`;
}

/** International mile, exact (NIST SP 811, appendix B). */
export const kmPerMile = 1.609344;

/** What the car's distances are counted in. */
export function distanceUnit(unit: VolumeUnit): "km" | "mi" {
	return unit === "L" ? "km" : "mi";
}

/** A distance in what the car counts it in. */
export function fromKm(km: number, unit: VolumeUnit): number {
	return unit === "L" ? km : km / kmPerMile;
}

/** "3 to 10 km", or whole miles; both ends in km. */
export function distanceRange(low: number, high: number, unit: VolumeUnit): string {
	const shown = (km: number) => whole.format(fromKm(km, unit));
	return `${formatWords().fromTo(shown(low), shown(high))}${space}${distanceUnit(unit)}`;
}

/** As typed at the pump, up to three decimals. */
export function exactVolume(litres: number, unit: VolumeUnit): string {
	return `${typed.format(fromLitres(litres, unit))}${space}${unit}`;
}

/** A chance as so many in twenty, the way the dots show it. */
export function inTwenty(chance: number): string {
	const count = Math.round(chance * 20);
	const words = formatWords();
	if (count === 0) return chance > 0.005 ? words.fewerThanOne : words.almostNone;
	return count === 20 && chance < 0.995 ? words.moreThanNineteen : words.inTwenty(whole.format(count));
}

const day = dates({ dateStyle: "medium" });
const dayAndTime = dates({ dateStyle: "medium", timeStyle: "short" });

export function date(iso: string): string {
	return day.format(Date.parse(iso));
}

export function dateTime(iso: string): string {
	return dayAndTime.format(Date.parse(iso));
}

/** Days from an instant to now, as a person would say. */
export function ago(iso: string, now: number): string {
	const midnight = (instant: number) => new Date(instant).setHours(0, 0, 0, 0);
	// Rounded: two days of the year are an hour longer or shorter.
	const days = Math.round((midnight(now) - midnight(Date.parse(iso))) / 86_400_000);
	const words = formatWords();
	if (days <= 0) return now - Date.parse(iso) < 3_600_000 ? words.withinTheHour : words.today;
	return days === 1 ? words.aDayAgo : days < 14 ? words.daysAgo(days) : date(iso);
}
