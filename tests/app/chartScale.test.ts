import fc from "fast-check";
import { expect, test } from "vitest";
import { bandPath, contentTicks, scale, stepPath, thinned, timeTicks } from "../../src/app/components/chartScale";

const steps = fc
	.array(fc.record({ gap: fc.integer({ min: 0, max: 9 }), median: fc.double({ min: 0, max: 1, noNaN: true }) }), {
		minLength: 1,
		maxLength: 900,
	})
	.map((drafts) => {
		let at = 0;
		return drafts.map(({ gap, median }) => {
			at += gap;
			return { at, median, low: median - 0.05, high: median + 0.05 };
		});
	});

test("thinning keeps the ends and the extremes, in order, and no more than asked for", () => {
	fc.assert(
		fc.property(steps, fc.integer({ min: 12, max: 300 }), (all, most) => {
			const kept = thinned(all, most);
			expect(kept.length).toBeLessThanOrEqual(most);
			expect(kept.every((step, i) => all.includes(step) && (i === 0 || step.at >= kept[i - 1].at))).toBe(true);
			expect(kept[0]).toBe(all[0]);
			expect(kept.at(-1)).toBe(all.at(-1));
			for (const key of ["low", "median", "high"] as const) {
				const [least, greatest] = [Math.min, Math.max].map((pick) => pick(...all.map((step) => step[key])));
				if (key !== "high") expect(Math.min(...kept.map((step) => step[key]))).toBe(least);
				if (key !== "low") expect(Math.max(...kept.map((step) => step[key]))).toBe(greatest);
			}
			if (all.length <= most) expect(kept).toBe(all);
		}),
		{ numRuns: 60 },
	);
});

test("thinning 2,000 steps leaves enough to see their course", () => {
	const all = Array.from({ length: 2000 }, (_, i) => {
		const median = 0.3 + 0.1 * Math.sin(i / 30) + 0.03 * Math.sin(i * 12.9);
		return { at: i, median, low: median - 0.03, high: median + 0.03 };
	});
	const kept = thinned(all, 300);
	expect(kept.length).toBeGreaterThan(180);
	const gaps = kept.slice(1).map(({ at }, i) => at - kept[i].at);
	expect(Math.max(...gaps)).toBeLessThan(60);
});

test("a line holds each value until the next, and the last to the end", () => {
	const x = scale(0, 10, 0, 100);
	const line = [
		{ at: 0, y: 5 },
		{ at: 4, y: 8 },
	];
	expect(stepPath(line, x, 10)).toBe("M0 5H40V8H100");
	expect(stepPath([], x, 10)).toBe("");
});

test("a band goes there along its upper edge and back along its lower one", () => {
	const x = scale(0, 10, 0, 100);
	const band = [
		{ at: 0, high: 5, low: 15 },
		{ at: 4, high: 8, low: 18 },
	];
	expect(bandPath(band, x, 10)).toBe("M0 5H40V8H100V18H40V15H0Z");
});

test("content ticks are round and as many as there is room for", () => {
	expect(contentTicks({ from: 0.2, to: 0.45, step: 0.05 }, 9)).toEqual([0.2, 0.25, 0.3, 0.35, 0.4, 0.45]);
	expect(contentTicks({ from: 0.2, to: 0.45, step: 0.05 }, 4)).toEqual([0.2, 0.3, 0.4]);
	expect(contentTicks({ from: 0, to: 0.9, step: 0.1 }, 6)).toEqual([0, 0.2, 0.4, 0.6, 0.8]);
	expect(contentTicks({ from: 0, to: 1, step: 0.1 }, 1)).toEqual([0, 1]);
});

const local = (year: number, month: number, day: number) => new Date(year, month - 1, day).getTime();
const ticks = (from: number, to: number, room = 300, letter = 9) =>
	timeTicks(from, to, scale(from, to, 0, room), (label) => label.length * letter);

test("time ticks stand at beginnings of days, of months or of years, by the time there is", () => {
	for (const { at } of ticks(local(2026, 6, 1) + 5, local(2026, 6, 9))) expect(new Date(at).getHours()).toBe(0);
	const months = ticks(local(2026, 2, 20), local(2026, 8, 20)).map(({ at }) => new Date(at));
	expect(months.length).toBeGreaterThanOrEqual(2);
	for (const date of months) expect([date.getDate(), date.getHours()]).toEqual([1, 0]);
	const years = ticks(local(2010, 6, 1), local(2026, 6, 1));
	expect(years.map(({ label }) => label)).toEqual(years.map(({ at }) => String(new Date(at).getFullYear())));
});

test("the year stands at the first month and wherever it changes", () => {
	const labels = ticks(local(2025, 10, 20), local(2026, 3, 20), 900, 25).map(({ label }) => /\d{4}/.test(label));
	expect(labels).toEqual([true, false, true, false, false]);
});

test("labels leave each other room, whatever the time, the width and the size of letters", () => {
	const span = fc.tuple(
		fc.integer({ min: local(1990, 1, 1), max: local(2090, 1, 1) }),
		fc.integer({ min: 2, max: 9000 }),
	);
	fc.assert(
		fc.property(span, fc.integer({ min: 120, max: 900 }), fc.integer({ min: 6, max: 22 }), (days, room, letter) => {
			const [from, to] = [days[0], days[0] + days[1] * 86_400_000];
			const found = ticks(from, to, room, letter);
			const x = scale(from, to, 0, room);
			expect(found.length).toBeGreaterThan(0);
			for (const [i, { at, label }] of found.entries()) {
				expect(at >= from && at <= to).toBe(true);
				if (i === 0) continue;
				const apart = ((label.length + found[i - 1].label.length) / 2) * letter;
				expect(x(at) - x(found[i - 1].at)).toBeGreaterThanOrEqual(apart);
			}
		}),
	);
});
