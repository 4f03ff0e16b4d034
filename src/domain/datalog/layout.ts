/** Where in a file the header, the units and the rows of numbers are. */
import { longestHeader, mostColumns } from "./constants";
import { looksNumeric } from "./logNumber";
import { unitNamed } from "./unitNames";

export type Row = readonly string[];

export interface Layout {
	/** One for each column, in order, no two alike. */
	readonly headers: readonly string[];
	/** From a row of units under the header; empty texts where there is none. */
	readonly units: readonly string[];
	/** Index of the first row of numbers. */
	readonly firstData: number;
}

/** Why a text is no log: it has one column, or more than any logger writes, or no rows of numbers. */
export type NoLayout = "oneColumn" | "tooWide" | "noNumbers";

/** How many fields most rows have, and how many rows those are; of rows with two fields or more. */
export function usualWidth(rows: readonly Row[]): { readonly width: number; readonly share: number } {
	const counts = new Map<number, number>();
	const filled = rows.filter((row) => !isBlank(row));
	for (const { length } of filled) if (length > 1) counts.set(length, (counts.get(length) ?? 0) + 1);
	let [width, most] = [0, 0];
	for (const [length, count] of counts) if (count > most) [width, most] = [length, count];
	return { width, share: filled.length === 0 ? 0 : most / filled.length };
}

/** Finds its way through lines before the header, a row of units under it, and files without any header. */
export function layoutOf(rows: readonly Row[]): Layout | NoLayout {
	const { width } = usualWidth(rows);
	if (width < 2) return "oneColumn";
	if (width > mostColumns) return "tooWide";
	const filled = rows.flatMap((row, at) =>
		isBlank(row) ? [] : [{ at, isData: fits(row, width) && isMostlyNumbers(row) }],
	);
	// A line of notes may look like numbers: rows of numbers come together.
	const first = filled.findIndex(({ isData }, i) => {
		const next = filled.slice(i, i + 6);
		const alike = next.filter((row) => row.isData).length;
		return isData && (next[1]?.isData ?? true) && alike * 2 > next.length;
	});
	const firstData = filled[first]?.at ?? -1;
	if (firstData < 0) return "noNumbers";
	const above = rows
		.slice(0, firstData)
		.filter((row) => row.length > 1 && fits(row, width) && !isBlank(row) && !isMostlyNumbers(row))
		.slice(-2);
	const last = above.at(-1)?.map((field) => field.trim().replace(/^[([](.*)[)\]]$/, "$1")) ?? [];
	const units = above.length > 1 && isUnits(last) ? last : [];
	if (units.length > 0) above.pop();
	const header = above.pop();
	const names = Array.from({ length: width }, (_, i) => tamed(header?.[i] ?? ""));
	return { headers: distinct(names), units: names.map((_, i) => units[i] ?? ""), firstData };
}

/** Not asked of what is blank. */
function isMostlyNumbers(row: Row): boolean {
	const filled = row.filter((field) => field.trim() !== "");
	return filled.filter(looksNumeric).length * 2 >= filled.length;
}

function isBlank(row: Row): boolean {
	return row.every((field) => field.trim() === "");
}

/** A separator at the end makes a field more, an empty last field is often left out. */
function fits(row: Row, width: number): boolean {
	return Math.abs(row.length - width) <= 1;
}

/** Most of what it says are units. */
function isUnits(row: Row): boolean {
	const filled = row.filter((field) => field !== "");
	return filled.filter((field) => unitNamed(field) !== null || field.length < 2).length * 2 > filled.length;
}

/** On one line, and with nothing in it that turns the words around it. */
function tamed(header: string): string {
	return header
		.slice(0, longestHeader)
		.replace(/[\p{Control}\p{Format}\p{Surrogate}\p{Zl}\p{Zp}]+/gu, " ")
		.trim();
}

/** Names for columns without one, numbers behind those that occur twice. */
function distinct(names: readonly string[]): string[] {
	const seen = new Set<string>();
	return names.map((given, i) => {
		const name = given === "" ? `Column ${i + 1}` : given;
		let unique = name;
		for (let n = 2; seen.has(unique); n++) unique = `${name} (${n})`;
		seen.add(unique);
		return unique;
	});
}
