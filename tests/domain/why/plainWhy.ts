/**
 * What knowing one thing is worth, the long way round: whole histories of two stops drawn forward from the model, each weighted
 * by the likelihood of what was said, and sorted into narrow bins of the thing that is known. Shares no code with the core.
 */
export interface PlainStop {
	readonly gauge?: number;
	readonly click?: boolean;
	/** All at the same place. */
	readonly pours: readonly { readonly low: number; readonly high: number; readonly litres: number }[];
	/** Of the tank after it: value and standard uncertainty. */
	readonly reading?: readonly [value: number, sd: number];
}

export interface PlainHistory {
	readonly capacity: number;
	readonly start: { readonly low: number; readonly high: number; readonly gauge: number };
	readonly stops: readonly PlainStop[];
	readonly daysBetween: number;
}

export interface PlainWorth {
	readonly share: number;
	readonly width: number;
}

/** By name: "start", "heel 1", "pour 1 1" (stop, pour), "area LOW" (by the label's lower limit), "capacity", "gauge"; and "now". */
export function plainWhy(history: PlainHistory, samples: number, seed: number): Map<string, PlainWorth> {
	const { uniform, normal } = generator(seed);
	const names = ["start", "capacity", "gauge"];
	for (const [s, { pours }] of history.stops.entries()) {
		names.push(`heel ${s + 1}`, ...pours.map((_, p) => `pour ${s + 1} ${p + 1}`));
	}
	names.push(...new Set(history.stops.flatMap(({ pours }) => pours.map(({ low }) => `area ${low}`))));
	const known = new Map(names.map((name) => [name, new Float64Array(samples)]));
	const content = new Float64Array(samples);
	const weight = new Float64Array(samples);
	for (let i = 0; i < samples; i++) {
		const one = drawn(history, uniform, normal);
		content[i] = one.content;
		weight[i] = one.weight;
		for (const name of names) (known.get(name) as Float64Array)[i] = one.values[name];
	}
	const all = Array.from({ length: samples }, (_, i) => i).filter((i) => weight[i] > 0);
	const worths = new Map<string, PlainWorth>([["now", { share: 0, width: widthOf(all, content, weight) }]]);
	for (const [name, x] of known) worths.set(name, conditioned(all, x, content, weight));
	return worths;
}

function drawn(history: PlainHistory, uniform: () => number, normal: () => number) {
	const { capacity, start, stops, daysBetween } = history;
	const values: Record<string, number> = {};
	const factor = 1 + 0.015 * normal();
	const full = capacity * factor;
	const bias = 0.03 * normal();
	let weight = 1;
	let volume = (start.gauge - bias - 0.05 * normal()) * full;
	if (volume < 0 || volume > 1.08 * full) weight = 0;
	let content = start.low + (start.high - start.low) * uniform();
	Object.assign(values, { start: content, capacity: factor, gauge: bias });
	const areas: Record<string, number> = {};
	const offsets: Record<string, number> = {};
	for (const [s, { gauge, click, pours, reading }] of stops.entries()) {
		volume *= uniform();
		values[`heel ${s + 1}`] = volume;
		if (gauge !== undefined) weight *= bell(gauge - volume / full - bias, 0.05);
		for (const [p, { low, high, litres }] of pours.entries()) {
			const key = `area ${low}`;
			const width = high - low;
			const before = areas[key];
			areas[key] =
				before === undefined
					? low + width * uniform()
					: folded(before + 0.01 * width * Math.sqrt(daysBetween) * normal(), low, high);
			const kept = before === undefined ? 0 : Math.exp(-daysBetween / 45);
			offsets[key] = kept * (offsets[key] ?? 0) + Math.sqrt(1 - kept * kept) * (width / 8) * normal();
			values[key] = areas[key];
			const pumped = Math.min(1, Math.max(0, areas[key] + offsets[key]));
			values[`pour ${s + 1} ${p + 1}`] = pumped;
			const truly = litres * (1 + 0.0025 * normal());
			content = (volume * content + truly * pumped) / (volume + truly);
			volume += truly;
		}
		if (volume > 1.08 * full) weight = 0;
		if (click) weight *= bell(volume - full, 0.02 * full) * full;
		if (reading) weight *= 0.98 * bell(reading[0] - content, reading[1]) + 0.02;
	}
	return { values, content, weight };
}

function folded(x: number, low: number, high: number): number {
	let inside = x;
	while (inside < low || inside > high) inside = inside < low ? 2 * low - inside : 2 * high - inside;
	return inside;
}

function bell(x: number, sd: number): number {
	return Math.exp(-0.5 * (x / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
}

const bins = 80;

function conditioned(all: readonly number[], x: Float64Array, y: Float64Array, weight: Float64Array): PlainWorth {
	const order = [...all].sort((a, b) => x[a] - x[b]);
	const total = sum(order, (i) => weight[i]);
	const mean = sum(order, (i) => weight[i] * y[i]) / total;
	const variance = sum(order, (i) => weight[i] * (y[i] - mean) ** 2) / total;
	let [within, width, reached] = [0, 0, 0];
	let bin: number[] = [];
	let done = 0;
	for (const i of order) {
		bin.push(i);
		reached += weight[i];
		if (reached < ((done + 1) * total) / bins && i !== order[order.length - 1]) continue;
		const mass = sum(bin, (k) => weight[k]);
		const middle = sum(bin, (k) => weight[k] * y[k]) / mass;
		within += sum(bin, (k) => weight[k] * (y[k] - middle) ** 2) / total;
		width += (mass / total) * widthOf(bin, y, weight);
		bin = [];
		done++;
	}
	return { share: 1 - within / variance, width };
}

function widthOf(members: readonly number[], y: Float64Array, weight: Float64Array): number {
	const order = [...members].sort((a, b) => y[a] - y[b]);
	const total = sum(order, (i) => weight[i]);
	const at = (chance: number) => {
		let reached = 0;
		for (const i of order) {
			reached += weight[i];
			if (reached >= chance * total) return y[i];
		}
		return y[order[order.length - 1]];
	};
	return at(0.95) - at(0.05);
}

function sum(members: readonly number[], value: (i: number) => number): number {
	let result = 0;
	for (const i of members) result += value(i);
	return result;
}

/** Mulberry32, and the polar method. */
function generator(seed: number) {
	let state = seed;
	const uniform = () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
	let spare: number | null = null;
	const normal = () => {
		if (spare !== null) {
			const kept = spare;
			spare = null;
			return kept;
		}
		for (;;) {
			const [a, b] = [2 * uniform() - 1, 2 * uniform() - 1];
			const square = a * a + b * b;
			if (square >= 1 || square === 0) continue;
			const scale = Math.sqrt((-2 * Math.log(square)) / square);
			spare = b * scale;
			return a * scale;
		}
	};
	return { uniform, normal };
}
