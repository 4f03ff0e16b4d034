import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import { estimateOf } from "../../../src/domain/estimator/estimate";
import { baselineOf } from "../../../src/domain/estimator/trim";
import type { TankEvent } from "../../../src/domain/event";
import { fuelDemand } from "../../../src/domain/fuel";
import { bitsOf } from "../../helpers/bitsOf";
import { aStart, aTankReading } from "../../helpers/logs";

const tank = { capacityL: 58 } as never;
const size = 2 ** 14;
const day = 86_400_000;

/** A trim so many days on, on a calibration for 30 %, two and a half of its three percent the car's own. */
function trimAt(days: number, value: number, fields: Record<string, unknown> = {}): TankEvent {
	const at = new Date(1.78e12 + days * day).toISOString();
	const base = { id: `trim ${days} ${value}`, at, kind: "reading", of: "trim", value, sd: 0.03, baselineSd: 0.025 };
	return { ...base, calibratedFor: 0.3, ...fields } as never;
}

const known = aStart({ contents: { value: 0.3, sd: 0.0001 }, gauge: 0.5 });
const believed = (events: readonly TankEvent[]) =>
	events.reduce((before, event) => absorb(before, event, tank, size).belief, initialBelief("car", tank, size));

describe("A trim on known fuel", () => {
	test("teaches the baseline as two bells make one (conjugate normals, textbook)", () => {
		const repeated = 0.03 ** 2 - 0.025 ** 2;
		const values = [0.03, 0.021, 0.036];
		const variance = 1 / (1 / 0.025 ** 2 + values.length / repeated);
		const mean = (variance * values.reduce((sum, value) => sum + value, 0)) / repeated;
		const learned = baselineOf(believed([known, ...values.map((value, i) => trimAt(1 + i / 1000, value))]), 0.3);
		// One reading in fifty is taken for rubbish, so that a little less is learned.
		expect(learned?.mean).toBeCloseTo(mean, 3);
		expect(learned?.sd).toBeCloseTo(Math.sqrt(variance), 3);
	});

	test("that is rubbish teaches next to nothing", () => {
		const before = [known, trimAt(1, 0.02)];
		const [good, spoiled] = [before, [...before, trimAt(2, 0.4)]].map((events) => baselineOf(believed(events), 0.3));
		expect(spoiled?.mean).toBeCloseTo(good?.mean ?? Number.NaN, 3);
		expect(spoiled?.sd).toBeCloseTo(good?.sd ?? Number.NaN, 3);
	});

	test("is forgotten within some years, but for what it was before", () => {
		const [young, old] = [2, 4000].map((days) => baselineOf(believed([known, trimAt(1, 0.03), trimAt(days, 0)]), 0.3));
		const alone = baselineOf(believed([known, trimAt(4000, 0)]), 0.3);
		expect(Math.abs(old?.mean ?? 1)).toBeLessThan(0.0005);
		expect(old?.sd).toBeCloseTo(alone?.sd ?? Number.NaN, 4);
		expect(young?.mean).toBeGreaterThan(0.01);
	});

	test("teaches its own calibration alone", () => {
		const belief = believed([known, trimAt(1, 0.03)]);
		expect(baselineOf(belief, 0.5)).toBeNull();
		expect(baselineOf(belief, 0.3)).not.toBeNull();
	});

	test("makes later ones on unknown fuel say more", () => {
		const drained = aStart({ id: "anew", at: "2026-07-01T10:00:00Z", contents: { range: [0, 0.85] }, gauge: 0.5 });
		const shown = fuelDemand(0.45, 0.3) * 1.02 - 1;
		const width = (events: readonly TankEvent[]) => {
			const { low, high } = estimateOf(believed(events), null);
			return high - low;
		};
		const taught = [known, ...[1, 2, 3, 4].map((days) => trimAt(days, 0.02))];
		expect(width([...taught, drained, trimAt(60, shown)])).toBeLessThan(
			0.75 * width([known, drained, trimAt(60, shown)]),
		);
	});
});

describe("A trim that does not say how much of it is the car's own", () => {
	const bare = (days: number, value: number) => trimAt(days, value, { baselineSd: undefined });

	test("teaches no baseline", () => {
		expect(baselineOf(believed([known, bare(1, 0.03)]), 0.3)).toBeNull();
	});

	test("weighs the content as a first one does that says it, near what the calibration is made for", () => {
		const start = aStart({ contents: { value: 0.3, sd: 0.06 }, gauge: 0.5 });
		const [first, second] = [bare(1, 0.02), trimAt(1, 0.02)].map((event) => estimateOf(believed([start, event]), null));
		expect(first.median).toBeCloseTo(second.median, 2);
		expect(first.low).toBeCloseTo(second.low, 2);
		expect(first.high).toBeCloseTo(second.high, 2);
	});
});

test("A belief with baselines goes on from a structured clone as if it had never been put away", () => {
	const before = believed([known, trimAt(1, 0.02)]);
	const [one, other] = [before, structuredClone(before)].map((belief) => {
		const read = absorb(belief, aTankReading({ at: "2026-08-01T10:00:00Z" }), tank).belief;
		return absorb(read, trimAt(80, 0.01), tank).belief;
	});
	expect(bitsOf(other)).toEqual(bitsOf(one));
	expect(baselineOf(other, 0.3)).toEqual(baselineOf(one, 0.3));
});
