/**
 * The oracle: the posterior of the blend model by brute force. Everything unknown is drawn forward from its prior, weighted
 * by the likelihood of what was said, and resampled when few samples carry the weight. Written from the model's description
 * alone and deliberately plain: it shares no number, formula or code with the estimator. Lines marked as the odometer's or
 * the baseline's do nothing for a history without one. Letters as in the description: V volume, E content, B gauge bias,
 * S capacity factor, C = S × rated capacity, A area level, D place offset, P what the pump delivers.
 */
import type { Contents, FillEvent, LogEvent, Product, ReadingEvent } from "../../src/domain/event";
import type { Calibration, Car } from "../../src/domain/vehicle";
import { baselinesOf } from "./bruteForceBaselines"; // baseline
import { legsOf } from "./bruteForceLegs"; // odometer

export interface BruteForceEntry {
	/** The event after which this is the state of knowledge. */
	readonly id: string;
	readonly median: number;
	/** The central 90 % interval of the content. */
	readonly low: number;
	readonly high: number;
	/** Chances of a content below and above the window in force; null without any calibration. */
	readonly below: number | null;
	readonly above: number | null;
}

export interface BruteForceOptions {
	/** A million or more: a click rules out all but a few samples in a hundred. */
	readonly samples: number;
	readonly seed: number;
}

type Column = Float64Array;
/** What is believed of an area level or a place offset, as of its last use. */
interface PumpColumn {
	readonly value: Column;
	usedAt: number;
}
const dayMs = 86_400_000;

export function bruteForce(car: Car, events: readonly LogEvent[], options: BruteForceOptions): BruteForceEntry[] {
	const n = options.samples;
	const { uniform, normal } = generator(options.seed);
	const rated = car.tank.capacityL;
	const gaugeSd = car.tank.gaugeSd ?? 0.05;
	const clickSd = car.tank.clickSd ?? 0.02;

	const drawn = (draw: (i: number) => number): Column => {
		const column = new Float64Array(n);
		for (let i = 0; i < n; i++) column[i] = draw(i);
		return column;
	};
	const weight = drawn(() => 1 / n);
	const kept = new Uint32Array(n);
	const old = new Float64Array(n);
	const B = drawn(() => 0.03 * normal());
	const S = drawn(() => 1 + 0.015 * normal());
	const E = drawn(() => 0.85 * uniform());
	const V = drawn((i) => S[i] * rated * uniform());
	const areas = new Map<string, PumpColumn>();
	const offsets = new Map<string, PumpColumn>();
	/** The level just before a stop's first fill: a gauge reading noted with any of its fills is about that level. */
	const levelBeforeStop = new Map<string, Column>();
	const legs = legsOf(n, normal); // odometer
	const baselines = baselinesOf(n, normal, fuelDemand, robustDensity); // baseline

	function weigh(likelihood: (i: number) => number): void {
		for (let i = 0; i < n; i++) weight[i] *= likelihood(i);
	}

	function weighByGauge(gauge: number, level: Column): void {
		weigh((i) => normalDensity(gauge, level[i] / (S[i] * rated) + B[i], gaugeSd));
	}

	/** Burning changes V, never E. */
	function fall(): void {
		legs.begin(V, E); // odometer
		for (let i = 0; i < n; i++) V[i] *= uniform();
	}

	function start(contents: Contents, gauge: number | undefined): void {
		for (let i = 0; i < n; i++) {
			E[i] = drawContent(contents);
			V[i] = S[i] * rated * (gauge === undefined ? uniform() : gauge - B[i] - gaugeSd * normal());
		}
		// Solving the gauge for V is a flat prior times its likelihood; this cuts the prior to 0…1.08 C.
		if (gauge !== undefined) weigh((i) => (V[i] >= 0 && V[i] <= 1.08 * S[i] * rated ? 1 : 0));
	}

	function drawContent(contents: Contents): number {
		if ("range" in contents) return between(contents.range, uniform());
		for (;;) {
			const content = contents.value + contents.sd * normal();
			if (content >= 0 && content <= 1) return content;
		}
	}

	/** Brings the area's level forward to now. */
	function useArea(product: Product, at: number): Column {
		const [lo, hi] = product.range;
		const key = JSON.stringify([product.id, lo, hi]);
		const area = areas.get(key);
		if (area === undefined) {
			const value = drawn(() => between(product.range, uniform()));
			areas.set(key, { value, usedAt: at });
			return value;
		}
		const sd = 0.01 * (hi - lo) * Math.sqrt((at - area.usedAt) / dayMs);
		for (let i = 0; i < n; i++) area.value[i] = reflected(area.value[i] + sd * normal(), lo, hi);
		area.usedAt = at;
		return area.value;
	}

	/** Brings the place's offset forward to now; a purchase at no named place is a place of its own. */
	function useOffset(product: Product, place: string | undefined, at: number): Column {
		const [lo, hi] = product.range;
		const sd = (hi - lo) / 8;
		if (place === undefined) return drawn(() => sd * normal());
		const key = JSON.stringify([place, product.id, lo, hi]);
		const offset = offsets.get(key);
		if (offset === undefined) {
			const value = drawn(() => sd * normal());
			offsets.set(key, { value, usedAt: at });
			return value;
		}
		const phi = Math.exp(-(at - offset.usedAt) / dayMs / 45);
		const fresh = Math.sqrt(1 - phi * phi) * sd;
		for (let i = 0; i < n; i++) offset.value[i] = phi * offset.value[i] + fresh * normal();
		offset.usedAt = at;
		return offset.value;
	}

	function delivered(product: Product, place: string | undefined, at: number): Column {
		const A = useArea(product, at);
		const D = useOffset(product, place, at);
		return drawn((i) => Math.min(1, Math.max(0, A[i] + D[i])));
	}

	function fill(event: FillEvent, at: number): void {
		if (!levelBeforeStop.has(event.stop)) {
			fall();
			levelBeforeStop.set(event.stop, V.slice());
		}
		if (event.gauge !== undefined) weighByGauge(event.gauge, levelBeforeStop.get(event.stop) as Column);
		const P = delivered(event.product, event.place, at);
		for (let i = 0; i < n; i++) {
			const a = event.litres * (1 + 0.0025 * normal());
			const total = V[i] + a;
			// Volumes add on mixing. Nothing into nothing leaves the content as it was.
			if (total > 0) E[i] = (V[i] * E[i] + a * P[i]) / total;
			V[i] = total;
		}
		weigh((i) => (V[i] <= 1.08 * S[i] * rated ? 1 : 0));
		if (event.toClick) weigh((i) => normalDensity(V[i], S[i] * rated, clickSd * S[i] * rated));
	}

	function read(event: ReadingEvent, at: number): void {
		if (baselines.heeded(event, at, E, weigh)) return; // baseline
		const { value, sd } = event;
		if (event.of === "tank") {
			weigh((i) => robustDensity(value, E[i], sd));
		} else if (event.of === "pump") {
			const P = delivered(event.product, event.place, at);
			weigh((i) => robustDensity(value, P[i], sd));
		} else {
			const assumed = fuelDemand(event.calibratedFor);
			weigh((i) => robustDensity(value, fuelDemand(E[i]) / assumed - 1, sd));
		}
	}

	function normalize(id: string): void {
		let total = 0;
		for (let i = 0; i < n; i++) total += weight[i];
		if (!(total > 0 && total < Infinity)) throw new Error(`every sample is ruled out at event ${id}`);
		for (let i = 0; i < n; i++) weight[i] /= total;
	}

	/** Systematic resampling, once the weight is worth fewer than half of the samples. */
	function resample(): void {
		let squares = 0;
		for (let i = 0; i < n; i++) squares += weight[i] * weight[i];
		if (1 / squares >= n / 2) return;
		const first = uniform();
		let source = 0;
		let reached = weight[0];
		for (let i = 0; i < n; i++) {
			while (source < n - 1 && reached < (first + i) / n) reached += weight[++source];
			kept[i] = source;
		}
		const pumps = [...areas.values(), ...offsets.values()].map((pump) => pump.value);
		pumps.push(...legs.columns()); // odometer
		pumps.push(...baselines.columns()); // baseline
		for (const column of [E, V, B, S, ...pumps, ...levelBeforeStop.values()]) {
			old.set(column);
			for (let i = 0; i < n; i++) column[i] = old[kept[i]];
		}
		weight.fill(1 / n);
	}

	function report(id: string, calibration: Calibration | undefined): BruteForceEntry {
		const [low, median, high] = quantiles(E, weight, [0.05, 0.5, 0.95]);
		if (calibration === undefined) return { id, median, low, high, below: null, above: null };
		const [bottom, top] = calibration.window;
		let below = 0;
		let above = 0;
		for (let i = 0; i < n; i++) {
			if (E[i] < bottom) below += weight[i];
			if (E[i] > top) above += weight[i];
		}
		return { id, median, low, high, below, above };
	}

	let calibration: Calibration | undefined = car.calibrations[0];
	const entries: BruteForceEntry[] = [];
	for (const event of inOrder(events)) {
		const at = Date.parse(event.at);
		if (event.kind === "void") continue;
		if (event.kind === "calibration") {
			calibration = car.calibrations.find((known) => known.id === event.calibration);
			if (calibration === undefined) throw new Error(`event ${event.id} names no calibration of the car`);
			continue;
		}
		if (event.kind === "start") start(event.contents, event.gauge);
		else if (event.kind === "fill") fill(event, at);
		else if (event.kind === "reading") read(event, at);
		else {
			fall();
			weighByGauge(event.gauge, V);
		}
		if (event.kind !== "reading") legs.heed(event, ("stop" in event && levelBeforeStop.get(event.stop)) || V, weigh); // odometer
		normalize(event.id);
		entries.push(report(event.id, calibration));
		resample();
	}
	return entries;
}

/** The events that count, by instant and then id. An event does not count if a void that itself counts targets it. */
function inOrder(events: readonly LogEvent[]): LogEvent[] {
	const counts = (id: string): boolean =>
		!events.some((event) => event.kind === "void" && event.target === id && counts(event.id));
	return events
		.filter((event) => counts(event.id))
		.sort((a, b) => Date.parse(a.at) - Date.parse(b.at) || (a.id < b.id ? -1 : 1));
}

/** Fuel demand at stoichiometry by volume, 1/(AFR·ρ): density mixes by volume, the air–fuel ratio by mass. */
function fuelDemand(content: number): number {
	const density = 0.745 * (1 - content) + 0.789 * content;
	const ethanolByMass = (0.789 * content) / density;
	const airFuelRatio = 14.6 * (1 - ethanolByMass) + 9.0 * ethanolByMass;
	return 1 / (airFuelRatio * density);
}

function normalDensity(x: number, mean: number, sd: number): number {
	const z = (x - mean) / sd;
	return Math.exp(-0.5 * z * z) / (sd * Math.sqrt(2 * Math.PI));
}

/** One reading in fifty is rubbish, of density one wherever it falls. */
function robustDensity(value: number, truth: number, sd: number): number {
	return 0.98 * normalDensity(value, truth, sd) + 0.02;
}

function between([lo, hi]: readonly [number, number], share: number): number {
	return lo + (hi - lo) * share;
}

/** Folds a walk back into its limits, as often as it takes. */
function reflected(x: number, lo: number, hi: number): number {
	if (!(hi > lo)) return lo;
	let folded = x;
	while (folded < lo || folded > hi) folded = folded < lo ? 2 * lo - folded : 2 * hi - folded;
	return folded;
}

/** Quantiles of weighted contents from a histogram of bars 0.00001 wide, far finer than the sampling error. */
function quantiles(contents: Column, weight: Column, shares: readonly number[]): number[] {
	const bars = new Float64Array(100_000);
	for (let i = 0; i < contents.length; i++) {
		bars[Math.min(bars.length - 1, Math.floor(contents[i] * bars.length))] += weight[i];
	}
	return shares.map((share) => {
		let bar = 0;
		let reached = bars[0];
		while (reached < share && bar < bars.length - 1) reached += bars[++bar];
		return (bar + 0.5) / bars.length;
	});
}

/** Ordinary pseudo-random numbers: Doty-Humphrey's sfc32, and normals by Box and Muller. */
function generator(seed: number): { uniform: () => number; normal: () => number } {
	const state = new Int32Array([0, seed, seed / 2 ** 32, 1]);
	/** Strictly between 0 and 1. */
	const uniform = (): number => {
		const mixed = (((state[0] + state[1]) | 0) + state[3]) | 0;
		state[3] = state[3] + 1;
		state[0] = state[1] ^ (state[1] >>> 9);
		state[1] = state[2] + (state[2] << 3);
		state[2] = ((state[2] << 21) | (state[2] >>> 11)) + mixed;
		return ((mixed >>> 0) + 0.5) / 2 ** 32;
	};
	const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
	for (let i = 0; i < 20; i++) uniform();
	return { uniform, normal };
}
