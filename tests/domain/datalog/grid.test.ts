import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { holdS, longestGapS, mostSteps } from "../../../src/domain/datalog/constants";
import { gridBuilder } from "../../../src/domain/datalog/grid";

function built(rows: readonly (readonly [at: number, value: number])[], isClock = false) {
	const builder = gridBuilder(["throttle"], isClock);
	const taken = rows.map(([at, value]) => builder.add(at, Float64Array.of(value)));
	return { ...builder.finish(), taken };
}

describe("the grid", () => {
	test("holds the mean of the rows of each half second", () => {
		const row = fc.tuple(
			fc.double({ min: 0.001, max: 2, noNaN: true }),
			fc.double({ min: -100, max: 100, noNaN: true }),
		);
		fc.assert(
			fc.property(fc.array(row, { minLength: 1, maxLength: 60 }), (steps) => {
				const at = (i: number) => steps.slice(1, i + 1).reduce((sum, [pause]) => sum + pause, 0);
				const rows = steps.map(([, value], i) => [at(i), value] as const);
				const { means, steps: count } = built(rows);
				for (let cell = 0; cell < count; cell++) {
					const inside = rows.filter(([time]) => Math.floor(time / 0.5) === cell).map(([, value]) => value);
					const mean = inside.reduce((sum, value) => sum + value, 0) / inside.length;
					if (inside.length > 0) expect(means.throttle?.[cell]).toBeCloseTo(mean, 3);
				}
			}),
		);
	});
	test("lets a value stand for some seconds and no longer, and leaves the rest open", () => {
		const { means } = built([
			[0, 5],
			[20, 7],
		]);
		expect(means.throttle?.[holdS / 0.5]).toBe(5);
		expect(means.throttle?.[holdS / 0.5 + 1]).toBeNaN();
		expect(means.throttle?.[40]).toBe(7);
	});
	test("cuts long pauses down and puts recordings one after another", () => {
		const { steps, recordings, taken } = built([
			[100, 1],
			[101, 1],
			[90_000, 2],
			[3, 3],
			[4, 3],
		]);
		expect(taken.every((each) => each === "taken")).toBe(true);
		expect(recordings).toBe(2);
		expect(steps).toBe(Math.floor((1 + longestGapS + longestGapS + 1) / 0.5) + 1);
	});
	test("goes on past midnight where the times are times of day", () => {
		const rows = [
			[86_399, 1],
			[0, 2],
			[1, 3],
		] as const;
		expect(built(rows, true)).toMatchObject({ recordings: 1, steps: 5 });
		expect(built(rows, false)).toMatchObject({ recordings: 2 });
	});
	test("says why a row is not taken", () => {
		const { taken } = built([
			[0, 1],
			[Number.NaN, 1],
			[1, Number.NaN],
			[0.9, 1],
			[2, 1],
			[1.5, 1],
		]);
		expect(taken).toEqual(["taken", "noTime", "noValues", "taken", "taken", "backwards"]);
	});
	test("takes longer steps for a log that never ends, and loses nothing of the mean", () => {
		const builder = gridBuilder(["throttle"], false);
		const seconds = mostSteps * 0.5 * 2.2;
		for (let at = 0; at < seconds; at += 4) builder.add(at, Float64Array.of(at < seconds / 2 ? 1 : 3));
		const { stepS, steps, means } = builder.finish();
		expect(stepS).toBe(2);
		expect(steps * stepS).toBeCloseTo(seconds, -1);
		expect(means.throttle?.[10]).toBe(1);
		expect(means.throttle?.[steps - 10]).toBe(3);
	});
});
