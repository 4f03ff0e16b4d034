/**
 * A car's settings: all its fields but its id and its calibrations. Each is a register of its own: of two copies the later
 * change counts, and where no time tells, the greater text. So two phones come to the same settings in whatever order.
 */
import type { Car } from "../domain/vehicle";
import { textInOrder } from "./head";
import { lastDay } from "./limits";

type Settings = Readonly<Record<string, unknown>>;

/** A field that two copies of a car say differently, and which one counts. */
export interface Decided {
	readonly field: string;
	readonly own: unknown;
	readonly other: unknown;
	readonly took: "own" | "other";
}

/** The last instant that a log may name. */
const latest = Date.parse(`${lastDay}T23:59:59Z`);

const notSettings = new Set(["id", "calibrations", "changed"]);

function fieldsOf(...cars: readonly Car[]): string[] {
	// One that was taken away is known by the time of that alone.
	const named = cars.flatMap((car) => [...Object.keys(car), ...Object.keys(car.changed ?? {})]);
	return [...new Set(named)].filter((field) => !notSettings.has(field));
}

function valueIn(car: Car, field: string): unknown {
	return Object.hasOwn(car, field) ? (car as unknown as Settings)[field] : undefined;
}

function changeOf({ changed = {} }: Car, field: string): string {
	const at = Object.hasOwn(changed, field) ? (changed as Settings)[field] : "";
	return typeof at === "string" ? at : "";
}

/** The car with the time noted beside every setting that differs from before; never earlier than the change before it. */
export function withChanges(before: Car, car: Car, at: string): Car {
	const differing = fieldsOf(before, car).filter(
		(field) => textInOrder(valueIn(before, field)) !== textInOrder(valueIn(car, field)),
	);
	if (differing.length === 0) return car;
	const times = differing.map((field) => {
		const last = Date.parse(changeOf(before, field));
		return [field, last >= Date.parse(at) ? new Date(Math.min(last + 1000, latest)).toISOString() : at] as const;
	});
	return { ...car, changed: { ...before.changed, ...car.changed, ...Object.fromEntries(times) } };
}

/** The settings of both, and what had to be decided. */
export function mergeSettings(own: Car, other: Car): { readonly car: Car; readonly decided: readonly Decided[] } {
	const merged: Record<string, unknown> = { id: own.id, calibrations: own.calibrations };
	const changed: Record<string, string> = {};
	const decided: Decided[] = [];
	for (const field of fieldsOf(own, other)) {
		const took = compare(own, other, field) >= 0 ? "own" : "other";
		const winner = took === "own" ? own : other;
		const value = valueIn(winner, field);
		if (value !== undefined) merged[field] = value;
		if (changeOf(winner, field) !== "") changed[field] = changeOf(winner, field);
		const values = [valueIn(own, field), valueIn(other, field)];
		if (textInOrder(values[0]) !== textInOrder(values[1]))
			decided.push({ field, own: values[0], other: values[1], took });
	}
	if (Object.keys(changed).length > 0) merged.changed = changed;
	return { car: merged as unknown as Car, decided };
}

/** By the instant of the change, then by what it says, then by how the instant is written. */
function compare(own: Car, other: Car, field: string): number {
	const [a, b] = [own, other].map((car) => {
		const at = changeOf(car, field);
		return { instant: Date.parse(at) || 0, value: textInOrder(valueIn(car, field)), at };
	});
	return a.instant - b.instant || inOrder(a.value, b.value) || inOrder(a.at, b.at);
}

function inOrder(a: string, b: string): number {
	return a < b ? -1 : a > b ? 1 : 0;
}

/** A part of a car, with the settings that it leaves out as one's own car has them: nothing is to be decided about those. */
export function settingsIn(part: Car, own: Car): Car {
	const left = fieldsOf(own).filter((field) => !Object.hasOwn(part, field) && changeOf(part, field) === "");
	const values = left.map((field) => [field, valueIn(own, field)] as const);
	const times = left.flatMap((field) => (changeOf(own, field) === "" ? [] : [[field, changeOf(own, field)] as const]));
	const changed = { ...part.changed, ...Object.fromEntries(times) };
	return {
		...part,
		...Object.fromEntries(values),
		...(Object.keys(changed).length > 0 && { changed }),
	};
}
