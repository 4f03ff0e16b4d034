/** Fuel trims after every stop: how much they narrow the range, against the oracle, and whether it still holds the truth. */
import { describe, expect, test } from "vitest";
import type { LogEvent } from "../../src/domain/event";
import { cases } from "../helpers/cases";
import { quickReplay } from "../helpers/quickReplay";
import { bruteForce } from "./bruteForce";
import { type Simulated, simulatedTrims } from "./simulate";

const isTrim = (event: LogEvent) => event.kind === "reading" && event.of === "trim";
const without = (events: readonly LogEvent[]) => events.filter((event) => !isTrim(event));

type Entries = readonly { readonly id: string; readonly low: number; readonly high: number }[];

/** Mean width of the 90 % range after every stop: with its trim where that was read, else after the event before it. */
function meanWidth({ events }: Simulated, entries: Entries): number {
	const found = new Map(entries.map((entry) => [entry.id, entry]));
	const widths = events.flatMap((event, i) => {
		if (!isTrim(event)) return [];
		const { low, high } = found.get(event.id) ?? found.get(events[i - 1].id)!;
		return [high - low];
	});
	return widths.reduce((sum, width) => sum + width, 0) / widths.length;
}

describe("A trim after every stop", () => {
	const histories = Array.from({ length: cases(3, 8) }, (_, n) => simulatedTrims(n, 0.02));

	test("narrows the 90 % range by what brute force says", () => {
		const found = { with: 0, without: 0 };
		const right = { with: 0, without: 0 };
		for (const history of histories) {
			for (const [which, events] of [
				["with", history.events],
				["without", without(history.events)],
			] as const) {
				const entries = [...quickReplay(history.car, events, 2 ** 14)];
				found[which] += meanWidth(
					history,
					entries.map(({ event, estimate }) => ({ id: event.id, ...estimate })),
				);
				right[which] += meanWidth(
					history,
					bruteForce(history.car, events, { samples: cases(60_000, 150_000), seed: 5 }),
				);
			}
		}
		const [narrowing, should] = [1 - found.with / found.without, 1 - right.with / right.without];
		console.info(`trims narrow the range by ${narrowing.toFixed(4)}, by brute force ${should.toFixed(4)}`);
		expect(should).toBeGreaterThan(0.1);
		expect(Math.abs(narrowing - should)).toBeLessThan(0.01);
	}, 300_000);

	test("leaves the truth within the 90 % range in at least 88 of 100 stops, though one reading in twenty is rubbish", () => {
		const verdicts = Array.from({ length: cases(80, 200) }, (_, n) => simulatedTrims(n, 0.05)).flatMap(
			({ car, events, truth }) =>
				[...quickReplay(car, events, 2 ** 12)].map(
					({ estimate: { low, high } }, i) => low <= truth[i] && truth[i] <= high,
				),
		);
		const share = verdicts.filter((held) => held).length / verdicts.length;
		console.info(`the range holds the truth after ${(100 * share).toFixed(1)} % of ${verdicts.length} events`);
		expect(share).toBeGreaterThan(0.88);
		expect(share).toBeLessThan(0.93);
	}, 300_000);
});
