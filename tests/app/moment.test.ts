import { expect, test } from "vitest";
import { momentAfter } from "../../src/app/moment";
import { aFill, aStart } from "../helpers/logs";

const now = Date.parse("2026-06-01T12:00:00.400Z");
const log = (...ats: string[]) => [aStart(), ...ats.map((at, i) => aFill({ id: `f${i}`, at }))];
const after = (...ats: string[]) => new Date(momentAfter(log(...ats), now)).toISOString();

test("what is entered now comes after a stop that was just saved, whose last product lies ahead of the clock", () => {
	expect(after("2026-06-01T12:00:00Z", "2026-06-01T12:00:01Z")).toBe("2026-06-01T12:00:02.000Z");
});

test("it does not share its second with the last entry", () => {
	expect(after("2026-06-01T12:00:00Z")).toBe("2026-06-01T12:00:01.000Z");
});

test("where another phone's clock is ahead, it comes after all of the stop that reaches beyond what a clock may be ahead", () => {
	expect(after("2026-06-01T12:00:09Z", "2026-06-01T12:00:10Z", "2026-06-01T12:00:11Z")).toBe(
		"2026-06-01T12:00:12.000Z",
	);
});

test("otherwise it is now, whatever lies in the past, or far ahead because a clock was wrong", () => {
	expect(after("2026-06-01T11:59:00Z")).toBe(new Date(now).toISOString());
	expect(after("2026-06-01T11:59:00Z", "2028-06-01T12:00:00Z")).toBe(new Date(now).toISOString());
	expect(momentAfter([], now)).toBe(now);
});
