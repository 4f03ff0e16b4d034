import { expect, test } from "vitest";
import { countingEvents, voidedBy } from "../../src/domain/event";
import { aFill, aLevel, aVoid } from "../helpers/logs";

const at = (minute: number) => `2026-06-07T10:${String(minute).padStart(2, "0")}:00+02:00`;
const voiding = (id: string, target: string, minute: number) => aVoid({ id, target, at: at(minute) });

test("voidedBy names the voids that count, every one of them", () => {
	const events = [aFill(), aLevel(), voiding("v1", "level", 1), voiding("v2", "level", 2)];
	expect(voidedBy(events)).toEqual(new Map([["level", ["v1", "v2"]]]));
});

test("a void that is void itself is named as such, and its target counts", () => {
	const events = [aFill(), voiding("v1", "fill", 1), voiding("v2", "v1", 2)];
	expect(voidedBy(events)).toEqual(new Map([["v1", ["v2"]]]));
	expect(voidedBy([...events, voiding("v3", "v2", 3)])).toEqual(
		new Map([
			["v2", ["v3"]],
			["fill", ["v1"]],
		]),
	);
});

test("voidedBy and countingEvents agree, also where voids aim at each other", () => {
	const round = [voiding("v1", "v3", 1), voiding("v2", "v1", 2), voiding("v3", "v2", 3)];
	const events = [aFill(), aLevel(), voiding("v4", "level", 4), ...round];
	const voids = voidedBy(events);
	expect(countingEvents(events).map(({ id }) => id)).toEqual(["fill"]);
	for (const { id, kind } of events) if (kind !== "void") expect(voids.has(id)).toBe(id === "level");
});

test("the order in which events come makes no difference", () => {
	const events = [aFill(), voiding("v1", "fill", 1), voiding("v2", "v1", 2)];
	expect(voidedBy([...events].reverse())).toEqual(voidedBy(events));
});
