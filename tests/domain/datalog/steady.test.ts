import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { idleSpeed, steadyWithin, warmC } from "../../../src/domain/datalog/constants";
import type { Grid } from "../../../src/domain/datalog/grid";
import type { Role } from "../../../src/domain/datalog/role";
import { reasons, steadySpans } from "../../../src/domain/datalog/steady";
import { trimsOf } from "../../../src/domain/datalog/trims";
import { gridWith } from "../../helpers/driveGrid";

const steps = 240;
const flat = (value: number, count = steps) => new Array<number>(count).fill(value);
/** The beat of a closed loop. */
const beat = (count = steps) => Array.from({ length: count }, (_, i) => (i % 2 === 0 ? 0.02 : -0.02));

const calm: Partial<Record<Role, readonly number[]>> = {
	speed: flat(90),
	rpm: flat(2200),
	coolant: flat(90),
	throttle: flat(0.2),
	load: flat(0.4),
	short1: beat(),
	long1: flat(0.05),
};

function steady(means: Partial<Record<Role, readonly number[]>>) {
	const grid: Grid = gridWith(means);
	const trims = trimsOf(grid);
	if (!trims) throw new Error("no trims");
	const { spans, left } = steadySpans(grid, trims);
	const told = spans.reduce((sum, { from, to }) => sum + (to - from) * grid.stepS, 0);
	// Every second either counts or has its reason.
	expect(told + Object.values(left).reduce((sum, each) => sum + each, 0)).toBeCloseTo(grid.steps * grid.stepS, 6);
	return { spans, left };
}

/** The column with another value from one step to another. */
function changed(role: Role, from: number, to: number, value: number | ((i: number) => number)) {
	const column = [...(calm[role] ?? flat(Number.NaN))];
	for (let i = from; i < to; i++) column[i] = typeof value === "number" ? value : value(i);
	return { ...calm, [role]: column };
}

describe("steadySpans()", () => {
	test("takes calm driving as one stretch", () => {
		expect(steady(calm).spans).toEqual([{ from: 0, to: steps }]);
	});

	test.each([
		["cold", "coolant", warmC - 1],
		["idle", "speed", idleSpeed - 1],
		["missing", "throttle", Number.NaN],
		["missing", "short1", Number.NaN],
	] as const)("leaves out what is %s by its %s", (reason, role, value) => {
		const { spans, left } = steady(changed(role, 100, 140, value));
		expect(left[reason]).toBe(20);
		for (const { from, to } of spans) expect(to <= 100 || from >= 140).toBe(true);
	});

	test.each([
		["throttle", 0.3],
		["load", 0.7],
		["speed", 110],
		["rpm", 3000],
	] as const)("leaves out the steps in which the %s moves, and takes what is calm before and after", (role, value) => {
		const { spans, left } = steady(changed(role, 100, 240, value));
		expect(spans).toHaveLength(2);
		expect(spans[0].from).toBe(0);
		expect(spans[1].to).toBe(steps);
		expect(left.unsteady).toBeGreaterThan(0);
		expect(left.unsteady).toBeLessThan(10);
	});

	test("needs ten seconds at a time", () => {
		const column = Array.from({ length: steps }, (_, i) => (i % 20 === 0 ? Number.NaN : 0.2));
		expect(steady({ ...calm, throttle: column })).toMatchObject({ spans: [], left: { tooShort: steps * 0.5 * 0.95 } });
	});

	test("does not take trims that stand at zero, unless something else says that the loop is closed", () => {
		const frozen = { ...calm, short1: flat(0) };
		expect(steady(frozen)).toMatchObject({ spans: [], left: { frozen: steps / 2 } });
		expect(steady({ ...frozen, fuelSystem: flat(1) }).spans).toHaveLength(1);
		expect(steady({ ...frozen, lambda: flat(1) }).spans).toHaveLength(1);
	});

	test("lets each move as far as it may, and no further", () => {
		// Of a jump the means over a second make two of half its height, and a window need hold but one.
		const most = 2 * (steadyWithin.speed ?? Number.NaN);
		expect(steady(changed("speed", 100, steps, 90 + most)).spans).toEqual([{ from: 0, to: steps }]);
		expect(steady(changed("speed", 100, steps, 90 + most + 0.5)).spans).toHaveLength(2);
	});

	test("takes trims for frozen only where those of all banks stand at zero", () => {
		const second = { short2: flat(0), long2: flat(0.05) };
		expect(steady({ ...calm, ...second }).spans).toEqual([{ from: 0, to: steps }]);
		expect(steady({ ...calm, ...second, short1: flat(0) })).toMatchObject({ spans: [], left: { frozen: steps / 2 } });
	});

	test("takes lambda at 1 for a closed loop and another one, or another command, for none", () => {
		expect(steady({ ...calm, lambda: flat(1.01) }).spans).toHaveLength(1);
		expect(steady({ ...calm, lambda: flat(0.86) })).toMatchObject({ spans: [], left: { lambdaOff: steps / 2 } });
		expect(steady({ ...calm, lambda: flat(1), commanded: flat(0.9) }).left.lambdaOff).toBe(steps / 2);
		expect(steady({ ...calm, fuelSystem: flat(0) }).left.openLoop).toBe(steps / 2);
	});

	test("waits until the trims stand still", () => {
		const { spans, left } = steady(changed("long1", 60, 140, (i) => 0.05 + 0.15 * Math.sin(i / 9)));
		expect(left.unsettled).toBeGreaterThan(20);
		for (const { from, to } of spans) expect(to <= 75 || from >= 125).toBe(true);
	});

	test("holds every step that lies in a calm window, and no other", () => {
		const move = fc.record({
			role: fc.constantFrom<Role>("throttle", "load", "speed"),
			at: fc.nat(steps - 1),
			// Neither these nor halves and sums of them come near 1, where rounding would decide.
			by: fc.constantFrom(0.7, 1.4, 2.1, 2.8),
		});
		fc.assert(
			fc.property(fc.array(move, { maxLength: 4 }), (moves) => {
				const means = { ...calm };
				for (const { role, at, by } of moves)
					means[role] = means[role]!.map((value, i) => (i < at ? value : value + by * (steadyWithin[role] ?? 0)));
				// Ranges over the one-second means of each window, all compared with all.
				const calmWindow = (from: number) =>
					(["throttle", "load", "speed"] as const).every((role) => {
						const column = means[role]!;
						// The first step has none before it: its second is that of the next.
						const smooth = (i: number) => (column[Math.max(0, i - 1)] + column[Math.max(1, i)]) / 2;
						for (let i = from; i < from + 20; i++)
							for (let j = from; j < i; j++)
								if (Math.abs(smooth(i) - smooth(j)) > (steadyWithin[role] ?? 0) + 1e-6) return false;
						return true;
					});
				const inside = new Set<number>();
				for (let from = 0; from + 20 <= steps; from++)
					if (calmWindow(from)) for (let i = from; i < from + 20; i++) inside.add(i);
				const found = new Set(
					steady(means).spans.flatMap(({ from, to }) => Array.from({ length: to - from }, (_, i) => from + i)),
				);
				expect(found).toEqual(inside);
			}),
			{ numRuns: 40 },
		);
	});

	test("knows no other reasons than it can give", () => {
		expect(Object.keys(steady(calm).left).sort()).toEqual([...reasons].sort());
	});
});
