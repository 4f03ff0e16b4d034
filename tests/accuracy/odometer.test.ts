/** What odometers are worth, on simulated cars whose truth is known; small samples, as for the 90 % range without. */
import { describe, expect, test } from "vitest";
import { levelOf } from "../../src/domain/estimator/estimate";
import type { LogEvent } from "../../src/domain/event";
import type { Fraction } from "../../src/domain/quantity";
import { runningOf, volumeRatio } from "../../src/domain/running";
import type { Car } from "../../src/domain/vehicle";
import { quickReplay } from "../helpers/quickReplay";
import { simulatedDriven } from "./simulate";

interface Range {
	readonly low: number;
	readonly high: number;
}

const histories = Array.from({ length: 60 }, (_, n) => simulatedDriven(n));
const [driven, plain] = [true, false].map((noted) =>
	histories.map(({ car, events }) => entriesOf(car, noted ? events : events.map(withoutOdometer))),
);

/** Ranges after every fill, with the truth. */
function afterFills(told: typeof driven, of: "content" | "level") {
	return told.flatMap((entries, n) =>
		entries.flatMap((entry, i) => {
			const { truth, levels } = histories[n];
			return entry.fill ? [{ ...entry[of], truth: (of === "content" ? truth : levels)[i] }] : [];
		}),
	);
}

const width = (ranges: readonly Range[]) => ranges.reduce((sum, { low, high }) => sum + high - low, 0) / ranges.length;
const coverage = (ranges: readonly (Range & { readonly truth: number })[]) =>
	ranges.filter(({ low, high, truth }) => low <= truth && truth <= high).length / ranges.length;

describe("With the odometer noted at every stop", () => {
	test("the 9-in-10 range of the content after a fill is narrower by a twelfth at least", () => {
		expect(width(afterFills(driven, "content")) / width(afterFills(plain, "content"))).toBeLessThan(11 / 12);
	});

	test("that of the level is narrower by a quarter at least", () => {
		expect(width(afterFills(driven, "level")) / width(afterFills(plain, "level"))).toBeLessThan(3 / 4);
	});

	test("both hold the truth about nine times in ten", () => {
		for (const of of ["content", "level"] as const) {
			expect(coverage(afterFills(driven, of))).toBeGreaterThan(0.88);
			expect(coverage(afterFills(driven, of))).toBeLessThan(0.94);
		}
	});

	test("the consumption is known within a quarter after eight stops, nine times in ten", () => {
		const ranges = driven.map((entries, n) => {
			const { truth, consumption } = histories[n];
			// Of the fuel now in the tank, as it is told.
			const perHundred = 100 * consumption * volumeRatio(truth[truth.length - 1] as Fraction, 0 as Fraction);
			return { ...entries[entries.length - 1].consumption!, truth: perHundred };
		});
		expect(Math.abs(coverage(ranges) - 0.9)).toBeLessThan(0.06);
		for (const { low, high } of ranges) expect(high / low).toBeLessThan(1.5);
		expect(width(ranges.map(({ low, high }) => ({ low: low / high, high: 1 })))).toBeLessThan(0.25);
	});

	test("no true odometer is taken for a slip", () => {
		expect(driven.flat().filter(({ surprise }) => surprise === "impossibleDistance")).toEqual([]);
	});

	test("one with a wrong digit for the thousands is called out in nine cars of ten, and the range holds all the same", () => {
		const slips = histories.slice(0, 30).map(({ car, events, truth }, n) => {
			const fifth = events.filter((event) => "odometerKm" in event)[4];
			const wrong = events.map((event) =>
				event === fifth && event.kind === "fill"
					? { ...event, odometerKm: (event.odometerKm ?? 0) + (n % 2 ? 1000 : -1000) }
					: event,
			);
			const entries = entriesOf(car, wrong);
			const { low, high } = entries[entries.length - 1].content;
			const named = entries.some(({ surprise }) => surprise === "impossibleDistance");
			return { low, high, truth: truth[truth.length - 1], named };
		});
		expect(slips.filter(({ named }) => named).length).toBeGreaterThanOrEqual(27);
		expect(coverage(slips)).toBeGreaterThan(0.84);
	});
});

function entriesOf(car: Car, events: readonly LogEvent[]) {
	return [...quickReplay(car, events, 4096)].map(({ event, belief, estimate, surprise }) => {
		const consumption = runningOf(belief)?.litresPer100Km ?? null;
		return {
			fill: event.kind === "fill",
			content: estimate,
			level: levelOf(belief),
			consumption,
			surprise: surprise?.kind,
		};
	});
}

function withoutOdometer(event: LogEvent): LogEvent {
	const { odometerKm: _, ...rest } = event as LogEvent & { odometerKm?: number };
	return rest as LogEvent;
}
