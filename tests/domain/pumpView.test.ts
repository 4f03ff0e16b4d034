import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../src/domain/estimator/absorb";
import type { Belief } from "../../src/domain/estimator/belief";
import { pumpView } from "../../src/domain/estimator/pumpView";
import type { Product } from "../../src/domain/event";
import { type Instant, instant } from "../../src/domain/quantity";
import { aPumpReading } from "../helpers/logs";

const flex = { id: "flex", range: [0.51, 0.83] } as unknown as Product;
const width = 0.32;
const tank = { capacityL: 58 } as never;
const size = 2 ** 15;
const labelAlone = bruteWidths([], 0)[0];
const fresh = initialBelief("car", tank, size);
const day = (n: number) => new Date(1.76e12 + n * 8.64e7).toISOString();
const viewOn = (belief: Belief, n: number, place: string | undefined, product = flex) =>
	pumpView(belief, product, place, instant(day(n)));

function sampled(belief: Belief, n: number, place: string, value: number, sd = 0.04): Belief {
	const reading = aPumpReading({ id: `sample of day ${n} at ${place}`, at: day(n), product: flex, place, value, sd });
	return absorb(belief, reading, tank, size).belief;
}

describe("A pump never visited", () => {
	const view = viewOn(fresh, 0, "north");

	test("is known by its label alone: a rectangle blurred by the place's offset", () => {
		expect(view.median).toBeCloseTo(0.67, 2);
		expect(view.high - view.low).toBeCloseTo(view.labelWidth, 6);
		const rectangle = 0.9 * width;
		expect(view.labelWidth).toBeGreaterThan(rectangle);
		expect(view.labelWidth).toBeCloseTo(labelAlone, 2);
		expect(view.better).toBe(0);
	});

	test("is known no better and no worse after half a year", () => {
		for (const { width: later } of view.fading) expect(later).toBeCloseTo(view.labelWidth, 2);
		expect(view.fading.map(({ days }) => days)).toEqual([0, 30, 90, 180]);
	});

	test("has twenty dots in order, half of them on either side of the median", () => {
		expect(view.dots).toHaveLength(20);
		expect(view.dots).toEqual([...view.dots].sort((a, b) => a - b));
		expect(view.dots[9]).toBeLessThanOrEqual(view.median);
		expect(view.dots[10]).toBeGreaterThanOrEqual(view.median);
		expect(view.dots[0]).toBeLessThan(view.low);
		expect(view.dots[19]).toBeGreaterThan(view.high);
	});
});

describe("A pump that was sampled", () => {
	const once = sampled(fresh, 0, "north", 0.6);
	const here = viewOn(once, 0, "north");

	test("is known as well, now and later, as brute force says", () => {
		const expected = bruteWidths([{ place: "north", on: 0, value: 0.6, sd: 0.04 }], 0);
		for (const [i, { width: found }] of here.fading.entries()) expect(found).toBeCloseTo(expected[i], 2);
		expect(here.better).toBeCloseTo(1 - expected[0] / labelAlone, 1);
	});

	test("is known the worse the longer nobody looks, and never worse than by its label", () => {
		const widths = here.fading.map((step) => step.width);
		for (const [i, later] of widths.slice(1).entries()) expect(later).toBeGreaterThan(widths[i]);
		expect(widths[3]).toBeLessThan(here.labelWidth);
		expect(here.fading[0].width).toBeCloseTo(here.high - here.low, 9);
	});

	test("tells of other places of the area, but less", () => {
		const elsewhere = viewOn(once, 0, "south");
		expect(elsewhere.better).toBeGreaterThan(0.1);
		expect(elsewhere.better).toBeLessThan(here.better - 0.1);
		const anywhere = viewOn(once, 0, undefined);
		expect(anywhere.better).toBeCloseTo(elsewhere.better, 1);
	});

	test("says nothing of another product", () => {
		const other = { id: "other", range: [0.51, 0.83] } as unknown as Product;
		expect(viewOn(once, 0, "north", other).better).toBe(0);
	});

	test("is known better once it is sampled again, as brute force says", () => {
		const twice = viewOn(sampled(once, 20, "north", 0.56), 30, "north");
		const samples = [
			{ place: "north", on: 0, value: 0.6, sd: 0.04 },
			{ place: "north", on: 20, value: 0.56, sd: 0.04 },
		];
		const expected = bruteWidths(samples, 30);
		for (const [i, { width: found }] of twice.fading.entries()) expect(found).toBeCloseTo(expected[i], 2);
	});
});

test("A fuel known exactly leaves nothing to learn", () => {
	const drum = { id: "drum", range: [0.85, 0.85] } as unknown as Product;
	const view = viewOn(fresh, 0, "shed", drum);
	expect(view).toMatchObject({ labelWidth: 0, better: 0 });
	expect(view.median).toBeCloseTo(0.85, 6);
});

test("A pump looks the same however often one looks", () => {
	const at = instant(day(40)) as Instant;
	const belief = sampled(fresh, 0, "north", 0.6);
	expect(pumpView(belief, flex, "north", at)).toEqual(pumpView(belief, flex, "north", at));
});

interface Sampled {
	readonly place: string;
	readonly on: number;
	readonly value: number;
	readonly sd: number;
}

/** Widths of the central 90 % on a day and 30, 90 and 180 days later, by weighing what is drawn forward from the model. */
function bruteWidths(samples: readonly Sampled[], today: number): number[] {
	const n = 100_000;
	const chance = generator(7);
	const uniform = () => 0.51 + width * chance.u();
	const later = [0, 30, 90, 180];
	const delivered = later.map(() => new Float64Array(n));
	const weight = new Float64Array(n);
	for (let i = 0; i < n; i++) {
		let [area, offset, on, w] = [uniform(), (width / 8) * chance.z(), samples[0]?.on ?? today, 1];
		const go = (to: number) => {
			area += 0.01 * width * Math.sqrt(to - on) * chance.z();
			while (area < 0.51 || area > 0.83) area = area < 0.51 ? 1.02 - area : 1.66 - area;
			const keep = Math.exp(-(to - on) / 45);
			offset = keep * offset + Math.sqrt(1 - keep * keep) * (width / 8) * chance.z();
			on = to;
		};
		for (const sample of samples) {
			go(sample.on);
			const z = (sample.value - Math.min(1, Math.max(0, area + offset))) / sample.sd;
			w *= (0.98 * Math.exp(-0.5 * z * z)) / (sample.sd * Math.sqrt(2 * Math.PI)) + 0.02;
		}
		weight[i] = w;
		for (const [k, days] of later.entries()) {
			go(today + days);
			delivered[k][i] = Math.min(1, Math.max(0, area + offset));
		}
	}
	return delivered.map((column) => {
		const order = Array.from(column.keys()).sort((a, b) => column[a] - column[b]);
		const total = weight.reduce((sum, w) => sum + w, 0);
		const at = (share: number) => {
			let reached = 0;
			for (const i of order) {
				reached += weight[i];
				if (reached >= share * total) return column[i];
			}
			return Number.NaN;
		};
		return at(0.95) - at(0.05);
	});
}

/** Ordinary pseudo-random numbers (mulberry32, from memory), and normals by Box and Muller. */
function generator(seed: number) {
	let state = seed;
	const u = () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 2 ** 32;
	};
	return { u, z: () => Math.sqrt(-2 * Math.log(u())) * Math.cos(2 * Math.PI * u()) };
}
