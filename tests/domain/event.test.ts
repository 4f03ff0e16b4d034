import fc from "fast-check";
import { expect, test } from "vitest";
import { compareEvents, countingEvents, isTankEvent, type LogEvent } from "../../src/domain/event";
import { aFill, aFlash, aLevel, aStart, aVoid } from "../helpers/logs";

const noon = "2026-06-02T12:00:00+02:00";
const later = "2026-06-03T12:00:00+02:00";
const ids = (events: readonly LogEvent[]) => countingEvents(events).map(({ id }) => id);
const level = (id: string, at = noon) => aLevel({ id, at });
const voids = (target: string, id: string, at = later) => aVoid({ id, at, target });

test("countingEvents(events) orders by instant, not by wall time", () => {
	const berlin = level("berlin", "2026-06-01T13:00:00+02:00");
	const london = level("london", "2026-06-01T12:30:00+01:00");
	expect(ids([london, berlin])).toEqual(["berlin", "london"]);
});

test("countingEvents(events) orders events of the same instant by id", () => {
	expect(ids([level("b"), level("a", "2026-06-02T10:00:00Z"), level("B")])).toEqual(["B", "a", "b"]);
});

test("compareEvents(a, b) is the same order", () => {
	const sorted = [level("b"), level("a", later), level("a"), level("B")].sort(compareEvents);
	expect(sorted.map(({ id, at }) => [id, at])).toEqual([
		["B", noon],
		["a", noon],
		["b", noon],
		["a", later],
	]);
	expect(compareEvents(level("a"), level("a"))).toBe(0);
});

test("countingEvents(events) leaves out what is voided, and the void", () => {
	expect(ids([level("a"), level("b"), voids("a", "x")])).toEqual(["b"]);
});

test("A void counts wherever it stands: before its target in the file, or in time", () => {
	expect(ids([voids("a", "x"), level("a"), level("b")])).toEqual(["b"]);
	expect(ids([level("a", later), level("b"), voids("a", "x", noon)])).toEqual(["b"]);
});

test("A void of a void brings the event back", () => {
	expect(ids([level("a"), voids("a", "x"), voids("x", "y", "2026-06-04T12:00:00+02:00")])).toEqual(["a"]);
	expect(ids([level("a"), voids("a", "x"), voids("x", "y"), voids("y", "z")])).toEqual([]);
});

test("A void of a void holds whichever of the two sorts first: clocks differ, and two taps may share a minute", () => {
	for (const [first, second] of ["xy", "yx"]) {
		expect(ids([level("a"), voids("a", first), voids(first, second)])).toEqual(["a"]);
	}
	expect(ids([level("a"), voids("a", "x"), voids("x", "y", noon)])).toEqual(["a"]);
});

test("An event voided twice comes back only when both voids are voided", () => {
	const twice = [level("a"), voids("a", "x"), voids("a", "y")];
	expect(ids([...twice, voids("x", "z")])).toEqual([]);
	expect(ids([...twice, voids("x", "z"), voids("y", "w")])).toEqual(["a"]);
});

test("Of voids that aim at each other the last one counts, and none hangs", () => {
	expect(ids([level("a"), voids("y", "x"), voids("x", "y"), voids("a", "z")])).toEqual([]);
	expect(ids([voids("y", "x"), voids("x", "y", "2026-06-04T12:00:00+02:00"), level("x2")])).toEqual(["x2"]);
	expect(ids([voids("x", "x"), level("a")])).toEqual(["a"]);
});

test("A long chain of voids is taken in its stride", () => {
	const chain = Array.from({ length: 50_001 }, (_, i) => voids(i === 0 ? "a" : `v${i - 1}`, `v${i}`));
	expect(ids([level("a"), ...chain])).toEqual([]);
	expect(ids([level("a"), ...chain.slice(1), voids("a", "v0")].slice(0, -1))).toEqual(["a"]);
});

test("A void that aims at nothing known leaves everything as it is", () => {
	expect(ids([level("a"), voids("gone", "x")])).toEqual(["a"]);
});

test("countingEvents(events) is the same whatever the order of the file", () => {
	const aLog = fc
		.array(fc.tuple(fc.constantFrom(noon, later), fc.option(fc.nat(7))), { minLength: 8, maxLength: 8 })
		.map((drafts) =>
			drafts.map(([at, target], i) => (target === null ? level(`e${i}`, at) : voids(`e${target}`, `e${i}`, at))),
		);
	fc.assert(
		fc.property(
			aLog.chain((log) => fc.tuple(fc.constant(log), fc.shuffledSubarray(log, { minLength: 8 }))),
			([log, shuffled]) => {
				expect(ids(shuffled)).toEqual(ids(log));
			},
		),
	);
});

test("countingEvents(events) leaves the file as it was", () => {
	const file = Object.freeze([level("b"), level("a")]);
	countingEvents(file);
	expect(file.map(({ id }) => id)).toEqual(["b", "a"]);
});

test("isTankEvent(event) tells what changes or observes the tank from the rest", () => {
	expect([aStart(), aFill(), aLevel()].every(isTankEvent)).toBe(true);
	expect([aFlash(), aVoid()].some(isTankEvent)).toBe(false);
});
