/** What must hold for any log. Laws of single numbers run on a small sample, laws of whole logs on the real replay. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Estimate, levelOf } from "../../../src/domain/estimator/estimate";
import { type Entry, replay } from "../../../src/domain/estimator/replay";
import { countingEvents, type LogEvent, type TankReading } from "../../../src/domain/event";
import { contentRange } from "../../../src/domain/quantity";
import { runningOf } from "../../../src/domain/running";
import { absurdLogs, believableLogs, contentRanges, type SmallLog } from "../../helpers/arbitraries";
import { cases } from "../../helpers/cases";
import { aTankReading } from "../../helpers/logs";
import { quickReplay } from "../../helpers/quickReplay";

const few = { numRuns: cases(2, 6) };
const some = { numRuns: 60 };
const many = { numRuns: 150 };

type Entries = (log: SmallLog, events: readonly LogEvent[]) => Record<string, Pick<Entry, "estimate" | "surprise">>;

/** Entries by the id of their event. */
const inFull: Entries = ({ car }, events) =>
	Object.fromEntries([...replay(car, events)].map(({ event, ...said }) => [event.id, said]));
const onSmall: Entries = ({ car }, events) =>
	Object.fromEntries(
		[...quickReplay(car, events, 1024)].map(({ event, estimate, surprise }) => [event.id, { estimate, surprise }]),
	);

const logAndNumber = fc.tuple(believableLogs(2), fc.nat());

describe.each([
	["A replay", inFull, few],
	["A replay on a small sample", onSmall, { numRuns: 20 }],
] as const)("%s", (_, entriesOf, runs) => {
	test("gives the same numbers to the last bit whatever the order of the file, and every time", () => {
		const shuffled = believableLogs(2).chain((log) =>
			fc.tuple(fc.constant(log), fc.shuffledSubarray([...log.events], { minLength: log.events.length })),
		);
		fc.assert(
			fc.property(shuffled, ([log, file]) => {
				expect(entriesOf(log, file)).toEqual(entriesOf(log, log.events));
			}),
			runs,
		);
	});

	test("with an event voided gives all other entries as if it had never been entered, to the last bit", () => {
		fc.assert(
			fc.property(logAndNumber, ([log, n]) => {
				const { id, at } = log.events[n % log.events.length];
				const withVoid: LogEvent[] = [...log.events, { id: "the void", kind: "void", at, target: id }];
				const without = log.events.filter((event) => event.id !== id);
				expect(entriesOf(log, withVoid)).toEqual(entriesOf(log, without));
			}),
			runs,
		);
	});

	test("with an event appended leaves earlier entries as they were, to the last bit", () => {
		fc.assert(
			fc.property(logAndNumber, ([log, n]) => {
				const counting = countingEvents(log.events);
				const cut = n % counting.length;
				expect(entriesOf(log, counting)).toMatchObject(entriesOf(log, counting.slice(0, cut)));
			}),
			runs,
		);
	});
});

describe("An odometer", () => {
	/** The log with all odometers dropped but, if there is one, the n-th. */
	const withOdometers = ({ events }: SmallLog, kept: number): LogEvent[] => {
		const noted = events.filter((event) => "odometerKm" in event);
		return events.map((event) => {
			if (!("odometerKm" in event) || event === noted[kept]) return event;
			const { odometerKm: _, ...rest } = event;
			return rest;
		});
	};

	test("that is the only one of a log changes nothing, to the last bit", () => {
		fc.assert(
			fc.property(logAndNumber, ([log, n]) => {
				const alone = inFull(log, withOdometers(log, n % log.events.length));
				const none = inFull(log, withOdometers(log, -1));
				expect(Object.values(alone).map(({ estimate, surprise }) => [estimate, surprise])).toEqual(
					Object.values(none).map(({ estimate, surprise }) => [estimate, surprise]),
				);
			}),
			few,
		);
	});

	test("never moves the lawful range", () => {
		const lawful = (log: SmallLog, events: readonly LogEvent[]) =>
			[...quickReplay(log.car, events, 16)].map(({ estimate: { lawfulLow, lawfulHigh } }) => [lawfulLow, lawfulHigh]);
		fc.assert(
			fc.property(believableLogs(4), (log) => {
				expect(lawful(log, log.events)).toEqual(lawful(log, withOdometers(log, -1)));
			}),
			many,
		);
	});
});

describe("The lawful range", () => {
	const last = (log: SmallLog, events: readonly LogEvent[]) => {
		const { lawfulLow, lawfulHigh } = [...quickReplay(log.car, events, 16)].at(-1)!.estimate;
		return [lawfulLow, lawfulHigh];
	};

	test("is never narrower with a wider product range", () => {
		fc.assert(
			fc.property(believableLogs(4), contentRanges, fc.nat(), (log, [low, high], n) => {
				const fills = log.events.filter(({ kind }) => kind === "fill");
				if (fills.length === 0) return;
				const chosen = fills[n % fills.length].id;
				const wider = log.events.map((event) => {
					if (event.id !== chosen || event.kind !== "fill") return event;
					const [from, to] = event.product.range;
					const range = contentRange(Math.min(low, from), Math.max(high, to));
					return { ...event, product: { ...event.product, range } };
				});
				const [narrow, wide] = [last(log, log.events), last(log, wider)];
				expect(wide[0]).toBeLessThanOrEqual(narrow[0] + 1e-12);
				expect(wide[1]).toBeGreaterThanOrEqual(narrow[1] - 1e-12);
			}),
			many,
		);
	});

	test("is not moved by readings of the content", () => {
		fc.assert(
			fc.property(believableLogs(4), (log) => {
				const level = log.events.filter(({ kind }) => kind !== "reading");
				expect(last(log, log.events)).toEqual(last(log, level));
			}),
			many,
		);
	});

	test("holds the true content of a tank whose pumps and gauge keep to it", () => {
		// Without a single error: a car that burns half of what it has, and pumps at one point of their range.
		const truths = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.array(fc.boolean(), { maxLength: 6 }));
		fc.assert(
			fc.property(truths, ([share, flexOrNot]) => {
				const at = (n: number) => new Date(1.75e12 + n * 8.64e7).toISOString();
				const along = ([low, high]: readonly number[]) => low + share * (high - low);
				let [level, content] = [30, along([0.09, 0.1])];
				const events: LogEvent[] = [
					{ id: "0", kind: "start", at: at(0), contents: { range: [0.09, 0.1] }, gauge: 0.5 } as never,
				];
				for (const [i, flex] of flexOrNot.entries()) {
					const range = flex ? [0.51, 0.83] : [0.09, 0.1];
					level /= 2;
					const fill = { kind: "fill", stop: `${i}`, litres: 30, gauge: level / 60 };
					events.push({ ...fill, id: `${i + 1}`, at: at(i + 1), product: { id: `${flex}`, range } } as never);
					content = (level * content + 30 * along(range)) / (level + 30);
					level += 30;
				}
				const car = { id: "car", name: "car", tank: { capacityL: 60 }, calibrations: [] } as never;
				const [low, high] = last({ car, events }, events);
				expect(content).toBeGreaterThanOrEqual(low - 1e-12);
				expect(content).toBeLessThanOrEqual(high + 1e-12);
			}),
			some,
		);
	});
});

describe("A reading of the tank", () => {
	test("never throws the account away: no chance shrinks by more than the rubbish floor allows", () => {
		const readings = fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.constantFrom(0.005, 0.02, 0.1, 0.4));
		fc.assert(
			fc.property(believableLogs(2), readings, (log, [value, sd]) => {
				const reading = aTankReading({ id: "reading", at: "2100-01-01T00:00:00Z", value, sd }) as TankReading;
				const [before, after] = [...quickReplay(log.car, [...log.events, reading], 4096)].slice(-2);
				// Drawing the sample afresh moves a chance by a particle or two.
				const slack = 2 / 4096;
				// The densest a good reading can be, against the 0.02 that every content is worth at least.
				const most = (0.98 * 0.3989423) / sd + 0.02;
				for (const mark of [before.estimate.low, before.estimate.median, before.estimate.high]) {
					const [was, is] = [before, after].map(({ belief }) => chanceBelow(mark, belief));
					expect(is).toBeGreaterThanOrEqual((was - slack) * (0.02 / most));
					expect(1 - is).toBeGreaterThanOrEqual((1 - was - slack) * (0.02 / most));
				}
			}),
			some,
		);
	});
});

describe("No NaN, no infinity and no impossible number leaves the core", () => {
	test("on believable logs", () => {
		fc.assert(fc.property(believableLogs(4), soundOnSmall), many);
		fc.assert(fc.property(believableLogs(2), soundInFull), few);
	});

	test("on absurd logs: impossible litres, contradicting gauges, readings far off, any dates", () => {
		fc.assert(fc.property(absurdLogs(6), soundOnSmall), { numRuns: 500 });
		fc.assert(fc.property(absurdLogs(4), soundInFull), few);
	});
});

function soundOnSmall({ car, events }: SmallLog): void {
	for (const { estimate, belief, surprise } of quickReplay(car, events, 256)) {
		expectSound(estimate);
		const level = levelOf(belief);
		expectRising([0, level.low, level.median, level.high]);
		for (const { low, median, high } of Object.values(runningOf(belief) ?? {})) {
			expectRising([0, low, median, high]);
			expect(high).toBeLessThan(Infinity);
		}
		expect(level.high).toBeLessThan(Infinity);
		if (surprise?.kind === "disagrees") expect(surprise.chance >= 0 && surprise.chance < 0.01).toBe(true);
	}
}

function soundInFull({ car, events }: SmallLog): void {
	for (const { estimate } of replay(car, events)) expectSound(estimate);
}

function expectSound(estimate: Estimate): void {
	const { low, median, high, below, above, lawfulLow, lawfulHigh, dots } = estimate;
	const chances = [below, above].filter((chance) => chance !== null);
	for (const share of [low, median, high, lawfulLow, lawfulHigh, ...chances, ...dots]) {
		expect(share >= 0 && share <= 1).toBe(true);
	}
	for (const numbers of [[low, median, high], [lawfulLow, lawfulHigh], dots]) expectRising(numbers);
	expect(dots).toHaveLength(20);
}

function expectRising(numbers: readonly number[]): void {
	for (let i = 1; i < numbers.length; i++) expect(numbers[i]).toBeGreaterThanOrEqual(numbers[i - 1]);
}

function chanceBelow(mark: number, { content, weight }: { content: Float32Array; weight: Float32Array }): number {
	let [below, all] = [0, 0];
	for (let i = 0; i < weight.length; i++) {
		all += weight[i];
		if (content[i] < mark) below += weight[i];
	}
	return below / all;
}
