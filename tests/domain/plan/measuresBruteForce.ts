/**
 * What measurements are worth, by plain nested simulation: draw the truth, draw what is read of it, weigh all samples by
 * that reading, see what is left of the doubt and how well one can plan then. Written from the model's description alone;
 * it shares no number, formula or code with the core.
 */

export interface Scene {
	readonly name: string;
	/** Content at the start of the account, rectangular. */
	readonly heel: readonly [number, number];
	/** Gauge at the start and at the stop, shares of the capacity; null: not noted. */
	readonly gaugeThen: number | null;
	readonly gaugeNow: number | null;
	/** Labels of the two products on sale. */
	readonly labels: readonly [readonly [number, number], readonly [number, number]];
	/** Litres in all; "click"; or null: no fill is planned. */
	readonly fill: number | "click" | null;
	readonly window: readonly [number, number];
	readonly leanBudget: number;
}

export interface Found {
	readonly narrowing: number;
	readonly gain: number;
}

export interface Answer {
	readonly width: number;
	readonly inside: number;
	/** By the measure's name, such as "pumpSample 0", "gauge", "analyser before", "click". */
	readonly worths: Readonly<Record<string, Found>>;
}

export interface Effort {
	readonly samples: number;
	readonly outcomes: number;
	readonly seed: number;
}

const rated = 60;
const calibratedFor = 0.3;
const litreStep = 0.5;

/** A plan: so much of one product, then of the other until the total; Infinity: until the click. */
interface Plan {
	readonly first: 0 | 1;
	readonly amount: number;
	readonly total: number;
}

interface Instrument {
	readonly ideal: (i: number, ended: number) => number;
	readonly sd: (ideal: number) => number;
	readonly robust: boolean;
	/** Where rubbish falls, an interval of length one. */
	readonly rubbishFrom: number;
	readonly early: boolean;
}

export function bruteForceWorth(scene: Scene, { samples: n, outcomes, seed }: Effort): Answer {
	const { uniform, normal } = generator(seed);
	const column = (draw: (i: number) => number) => Float64Array.from({ length: n }, (_, i) => draw(i));

	// The tank at the pump, forward from the start of the account.
	const C = new Float64Array(n);
	const B = new Float64Array(n);
	const V = new Float64Array(n);
	for (let i = 0; i < n; i++) {
		for (;;) {
			C[i] = rated * (1 + 0.015 * normal());
			B[i] = 0.03 * normal();
			V[i] = C[i] * (scene.gaugeThen === null ? uniform() : scene.gaugeThen - B[i] - 0.05 * normal());
			if (V[i] >= 0 && V[i] <= 1.08 * C[i]) break;
		}
		V[i] *= uniform();
	}
	const weight = column((i) => (scene.gaugeNow === null ? 1 : bell(scene.gaugeNow, V[i] / C[i] + B[i], 0.05)));
	const E = column(() => scene.heel[0] + (scene.heel[1] - scene.heel[0]) * uniform());
	const P = scene.labels.map(([low, high]) =>
		column(() => Math.min(1, Math.max(0, low + (high - low) * uniform() + ((high - low) / 8) * normal()))),
	);
	const room = column((i) => Math.max(0, C[i] * (1 + 0.02 * normal()) - V[i]));

	const ended = (i: number, { first, amount, total }: Plan, click: number) => {
		const a = Math.min(amount, click);
		const b = Math.min(total, click) - a;
		const volume = V[i] + a + b;
		return volume > 0 ? (V[i] * E[i] + a * P[first][i] + b * P[1 - first][i]) / volume : E[i];
	};

	const plans = scene.fill === null ? [] : plansFor(scene.fill);
	/** All that may ever be planned; which of them can be made hangs on what is known of the room. */
	function plansFor(fill: number | "click"): Plan[] {
		const total = fill === "click" ? Infinity : fill;
		const all: Plan[] = [0, 1].map((only) => ({ first: (1 - only) as 0 | 1, amount: 0, total }));
		for (let amount = litreStep; amount <= Math.min(rated, total - litreStep); amount += litreStep) {
			for (const first of [0, 1] as const) all.push({ first, amount, total });
		}
		return all;
	}
	const byRoom = inOrder(room);

	/** For each plan: 0 below the window, 1 inside, 2 above, by sample. */
	const sidesOf = (some: readonly Plan[]) =>
		some.map((plan) =>
			Uint8Array.from({ length: n }, (_, i) => {
				const e = ended(i, plan, room[i]);
				return e < scene.window[0] ? 0 : e > scene.window[1] ? 2 : 1;
			}),
		);
	const sides = sidesOf(plans);
	/** The plan to choose with such weights, and its chance of ending inside. */
	function chosen(w: Float64Array, among = plans, where = sides): { plan: Plan; inside: number; above: number } {
		const sure = room[quantileOf(byRoom, (i) => w[i], 0.05)];
		const chances = among.flatMap((plan, k) => {
			// What is poured before the click must surely fit.
			if (plan.total === Infinity && plan.amount > sure) return [];
			const sums = [0, 0, 0];
			for (let i = 0; i < n; i++) sums[where[k][i]] += w[i];
			const all = sums[0] + sums[1] + sums[2];
			return [{ plan, inside: sums[1] / all, above: sums[2] / all }];
		});
		const least = Math.min(...chances.map(({ above }) => above));
		const limit = least <= scene.leanBudget ? scene.leanBudget : least + 0.005;
		return chances.filter(({ above }) => above <= limit).sort((a, b) => b.inside - a.inside)[0];
	}

	const now = scene.fill === null ? null : chosen(weight);
	const plan = now?.plan ?? null;
	const total = weight.reduce((sum, w) => sum + w, 0);

	/** Samples to take for the truth, one for each outcome: evenly over the weight, in the order of what will be read. */
	function truths(key: Float64Array): number[] {
		const order = inOrder(key);
		let k = 0;
		let reached = weight[order[0]];
		return Array.from({ length: outcomes }, (_, m) => {
			const mark = ((m + uniform()) / outcomes) * total;
			while (reached < mark && k < n - 1) reached += weight[order[++k]];
			return order[k];
		});
	}

	/**
	 * Mean widths of the central 90 % once the click, if the plan goes to it, has told what it has to tell, and once the
	 * instrument, if any, has too: of the same truths, since the click alone makes widths differ much.
	 */
	function meanWidths(of: Plan | null, instrument: Instrument | null): { clicked: number; told: number } {
		const toClick = of?.total === Infinity;
		const final = column((i) => (of ? ended(i, of, room[i]) : E[i]));
		const everyone = inOrder(final);
		const unread = toClick ? 0 : widthOf(everyone, final, weight);
		if (!toClick && !instrument) return { clicked: unread, told: unread };
		const sums = { clicked: 0, told: 0 };
		for (const truth of truths(column((i) => (instrument ? instrument.ideal(i, final[i]) : room[i])))) {
			const click = room[truth];
			const w = new Float64Array(n);
			for (let i = 0; i < n; i++) w[i] = weight[i] * (toClick ? bell(click, C[i] - V[i], 0.02 * C[i]) : 1);
			// Of the samples only those count that such a click leaves anything of.
			const left = toClick ? everyone.filter((i) => w[i] > 1e-6 * weight[i]) : everyone;
			const content = toClick ? new Float64Array(n) : final;
			if (toClick) for (const i of left) content[i] = ended(i, of, click);
			if (toClick) left.sort((a, b) => content[a] - content[b]);
			sums.clicked += toClick ? widthOf(left, content, w) : unread;
			if (!instrument) continue;
			const value = read(instrument, truth, content[truth]);
			for (const i of left) w[i] *= likelihood(instrument, value, i, content[i]);
			sums.told += widthOf(left, content, w);
		}
		return { clicked: sums.clicked / outcomes, told: sums.told / outcomes };
	}

	function widthOf(order: readonly number[], content: Float64Array, w: Float64Array): number {
		const at = (share: number) => content[quantileOf(order, (i) => w[i], share)];
		return at(0.95) - at(0.05);
	}

	function read({ ideal, sd, robust, rubbishFrom }: Instrument, truth: number, content: number): number {
		if (robust && uniform() < 0.02) return rubbishFrom + uniform();
		const x = ideal(truth, content);
		return x + sd(x) * normal();
	}

	function likelihood({ ideal, sd, robust }: Instrument, value: number, i: number, content: number): number {
		const x = ideal(i, content);
		return robust ? 0.98 * bell(value, x, sd(x)) + 0.02 : bell(value, x, sd(x));
	}

	function meanInside(instrument: Instrument): number {
		let sum = 0;
		for (const truth of truths(column((i) => instrument.ideal(i, Number.NaN)))) {
			const value = read(instrument, truth, Number.NaN);
			sum += chosen(column((i) => weight[i] * likelihood(instrument, value, i, Number.NaN))).inside;
		}
		return sum / outcomes;
	}

	const width = meanWidths(plan, null).clicked;
	const worths: Record<string, Found> = {};
	for (const [name, instrument] of Object.entries(instruments())) {
		if (!plan && !instrument.early) continue;
		const { clicked, told } = meanWidths(plan, instrument);
		const narrowing = 1 - told / clicked;
		worths[name] = { narrowing, gain: now && instrument.early ? meanInside(instrument) - now.inside : 0 };
	}
	if (now && typeof scene.fill === "number") {
		const clickPlans = plansFor("click");
		const best = chosen(weight, clickPlans, sidesOf(clickPlans));
		if (!(best.above > scene.leanBudget && now.above <= scene.leanBudget)) {
			const narrowing = 1 - meanWidths(best.plan, null).clicked / width;
			worths.click = { narrowing, gain: best.inside - now.inside };
		}
	}
	const insideNow = weight.reduce((sum, w, i) => (E[i] < scene.window[0] || E[i] > scene.window[1] ? sum : sum + w), 0);
	return { width, inside: now ? now.inside : insideNow / total, worths };

	function instruments(): Record<string, Instrument> {
		const tube = (x: number) => (x <= 0.4 ? 0.02 : 0.04);
		const content = { robust: true, rubbishFrom: 0 };
		const found: Record<string, Instrument> = {};
		if (scene.gaugeNow === null) {
			const ideal = (i: number) => V[i] / C[i] + B[i];
			found.gauge = { ideal, sd: () => 0.05, robust: false, rubbishFrom: 0, early: true };
		}
		for (const offer of plan ? [0, 1] : []) {
			found[`pumpSample ${offer}`] = { ideal: (i) => P[offer][i], sd: tube, early: true, ...content };
		}
		for (const when of ["before", "after"] as const) {
			const early = when === "before";
			const tank = (i: number, after: number) => (early ? E[i] : after);
			found[`tankSample ${when}`] = { ideal: tank, sd: tube, early, ...content };
			found[`analyser ${when}`] = { ideal: tank, sd: () => 0.025, early, ...content };
			const trim = (i: number, after: number) => fuelDemand(tank(i, after)) / fuelDemand(calibratedFor) - 1;
			found[`trim ${when}`] = { ideal: trim, sd: () => 0.03, robust: true, rubbishFrom: -0.5, early };
		}
		return found;
	}
}

/** 1/(AFR·ρ): density mixes by volume, the air–fuel ratio by mass. */
function fuelDemand(content: number): number {
	const density = 0.745 * (1 - content) + 0.789 * content;
	const byMass = (0.789 * content) / density;
	return 1 / ((14.6 * (1 - byMass) + 9 * byMass) * density);
}

function bell(x: number, mean: number, sd: number): number {
	const z = (x - mean) / sd;
	return Math.exp(-0.5 * z * z) / (sd * Math.sqrt(2 * Math.PI));
}

/** The first index, in that order, at which the share of the weight is reached. */
function quantileOf(order: readonly number[], weight: (i: number) => number, share: number): number {
	let all = 0;
	for (const i of order) all += weight(i);
	let reached = 0;
	for (const i of order) {
		reached += weight(i);
		if (reached >= share * all) return i;
	}
	return order[order.length - 1];
}

function inOrder(values: Float64Array): number[] {
	return Array.from(values.keys()).sort((a, b) => values[a] - values[b]);
}

/** Ordinary pseudo-random numbers (mulberry32, from memory), and normals by Box and Muller. */
function generator(seed: number): { uniform: () => number; normal: () => number } {
	let state = seed | 0;
	const uniform = () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), 1 | state);
		t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
		return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 2 ** 32;
	};
	return { uniform, normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()) };
}
