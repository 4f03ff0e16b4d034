import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toJSONSchema } from "zod/mini";
import { compareEvents } from "../../src/domain/event";
import { formatLog, type Log, parseLog } from "../../src/store/backup";
import { scanJson } from "../../src/store/scanJson";
import { logSchema } from "../../src/store/wire";
import { aFill, aLog, logs } from "../helpers/logs";
import { placeOf, saidOf } from "../helpers/sentences";

function parsed(text: string): Log {
	const result = parseLog(text);
	if (!result.ok) throw new Error(saidOf(result.error));
	return result.value;
}

const inOrder = (log: Log): Log => ({ ...log, events: [...log.events].sort(compareEvents) });

describe("formatLog and parseLog", () => {
	test("lose nothing: parse of format is the log, in the order of replay", () => {
		fc.assert(
			fc.property(logs, (log) => {
				expect(parsed(formatLog(log))).toEqual(inOrder(log));
			}),
		);
	});

	test("write the same text for the same log, whatever the order of events and names", () => {
		fc.assert(
			fc.property(logs, fc.infiniteStream(fc.nat()), (log, picks) => {
				const text = formatLog(log);
				const shuffled = { car: backwards(log.car), events: shuffle(log.events.map(backwards), picks) };
				expect(formatLog(shuffled)).toBe(text);
				expect(formatLog(parsed(text))).toBe(text);
			}),
		);
	});

	test("write two spaces, one newline at the end, and what a reader looks for first", () => {
		const text = formatLog(aLog());
		expect(text).toMatch(/^{\n {2}"format": "heeltap-log",\n {2}"version": 1,\n {2}"car": {\n {4}"id": "car",\n/);
		expect(text).toMatch(/[^\n]\n$/);
	});

	test("keep the fields they do not know, wherever they are", () => {
		const extra = { made: { by: ["a", "newer", null, 1.5, "\u{1F600}"] } };
		const log = aLog({ events: [aFill({ ...extra, product: { id: "E85", range: [0.5, 0.8], ...extra } })] });
		const car = { ...log.car, ...extra, tank: { ...log.car.tank, ...extra } };
		expect(parsed(formatLog({ ...log, car }))).toEqual({ ...log, car });
	});
});

describe("parseLog", () => {
	test("takes one of every kind", () => {
		expect(parsed(JSON.stringify({ format: "heeltap-log", version: 1, ...aLog() }))).toEqual(aLog());
	});

	test("takes a byte-order mark, other line ends and fields of the envelope it does not know", () => {
		const text = `\uFEFF${formatLog(aLog()).replace("{", '{ "note": "mine",').replace(/\n/g, "\r\n")}`;
		expect(parsed(text)).toEqual(inOrder(aLog()));
	});

	test.each([
		"2026-06-01T17:30Z",
		"2024-02-29T23:59:59.123456+14:00",
		"2000-02-29T00:00:00-03:30",
		"2200-12-31T23:59Z",
	])("takes the time %s", (at) => {
		expect(parsed(formatLog(aLog({ events: [aFill({ at })] }))).events[0].at).toBe(at);
	});

	test("takes a car that has neither calibrations nor events", () => {
		const log = aLog({ events: [] });
		const bare = { ...log, car: { ...log.car, calibrations: [] } };
		expect(parsed(formatLog(bare))).toEqual(bare);
	});

	test("never throws on a mangled text, and names a place in one line", () => {
		const splice = fc.tuple(
			fc.double({ min: 0, max: 1, noNaN: true }),
			fc.nat(12),
			fc.oneof(fc.string(), fc.string({ unit: "binary" }), punctuation),
		);
		fc.assert(
			fc.property(logs, fc.array(splice, { minLength: 1, maxLength: 4 }), (log, splices) => {
				let text = formatLog(log);
				for (const [part, cut, put] of splices) {
					const at = Math.floor(part * text.length);
					text = text.slice(0, at) + put + text.slice(at + cut);
				}
				expectSettled(text);
			}),
			{ numRuns: 500 },
		);
	});

	test("never throws on a log in which any value was replaced by any other", () => {
		const hostile = fc.oneof(fc.jsonValue(), fc.constantFrom(null, -1, 1e308, 5e-324, "", [], {}, [[]], true));
		fc.assert(
			fc.property(logs, fc.array(fc.nat(), { minLength: 1, maxLength: 6 }), hostile, (log, picks, value) => {
				const file = JSON.parse(formatLog(log));
				replaceSomewhere(file, picks, value);
				expectSettled(JSON.stringify(file));
			}),
			{ numRuns: 500 },
		);
	});

	test("never takes what it would not write again the same", () => {
		fc.assert(
			fc.property(logs, fc.array(fc.nat(), { minLength: 1, maxLength: 6 }), fc.jsonValue(), (log, picks, value) => {
				const file = JSON.parse(formatLog(log));
				replaceSomewhere(file, picks, value);
				const result = parseLog(JSON.stringify(file));
				if (result.ok) expect(parsed(formatLog(result.value))).toEqual(inOrder(result.value));
			}),
		);
	});
});

describe("scanJson", () => {
	test("finds no fault exactly where JSON.parse finds none", () => {
		const almost = fc.array(
			fc.oneof(punctuation, fc.constantFrom("1", "-", "0", ".", "e", "true", "nul", '"a"', "\\", " ", "\t")),
		);
		const texts = fc.oneof(
			almost.map((parts) => parts.join("")),
			fc.json(),
			fc.string(),
		);
		fc.assert(
			fc.property(texts, (text) => {
				const fault = scanJson(text);
				if (!fault?.refused) expect(fault === null).toBe(isJson(text));
			}),
			{ numRuns: 3000 },
		);
	});
});

test("logSchema makes a JSON Schema with the ranges in it", () => {
	expect(toJSONSchema(logSchema, { io: "input" })).toMatchObject({
		required: ["format", "version", "car", "events"],
		properties: {
			car: { properties: { tank: { properties: { capacityL: { exclusiveMinimum: 0, maximum: 2000 } } } } },
		},
	});
});

const punctuation = fc.constantFrom("{", "}", "[", "]", ",", ":", '"', "\\", "\n", "{}", "[[", "null");

function expectSettled(text: string): void {
	const result = parseLog(text);
	if (result.ok) return;
	expect(placeOf(result.error)).not.toBe("");
	expect(saidOf(result.error)).toMatch(/: ./);
	expect(saidOf(result.error)).not.toMatch(/\p{Control}|\p{Surrogate}/u);
}

function isJson(text: string): boolean {
	try {
		JSON.parse(text);
		return true;
	} catch {
		return false;
	}
}

function replaceSomewhere(root: Record<string, unknown>, picks: readonly number[], value: unknown): void {
	let node = root;
	for (const [i, pick] of picks.entries()) {
		const keys = Object.keys(node);
		if (keys.length === 0) return;
		const key = keys[pick % keys.length];
		const inner = node[key];
		if (i === picks.length - 1 || typeof inner !== "object" || inner === null) {
			node[key] = value;
			return;
		}
		node = inner as Record<string, unknown>;
	}
}

function backwards<T>(value: T): T {
	if (Array.isArray(value)) return value.map(backwards) as T;
	if (typeof value !== "object" || value === null) return value;
	return Object.fromEntries(
		Object.entries(value)
			.reverse()
			.map(([name, inner]) => [name, backwards(inner)]),
	) as T;
}

function shuffle<T>(values: readonly T[], picks: Iterable<number>): T[] {
	const keyed = values.map((value) => ({ value, key: 0 }));
	const stream = picks[Symbol.iterator]();
	for (const entry of keyed) entry.key = stream.next().value ?? 0;
	return keyed.sort((a, b) => a.key - b.key).map(({ value }) => value);
}
