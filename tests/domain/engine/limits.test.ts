import { expect, test } from "vitest";
import type { LimitKind } from "../../../src/domain/engine/capability";
import { checkedFuelSystem, type FuelSystem } from "../../../src/domain/engine/fuelSystem";
import { limitsOf } from "../../../src/domain/engine/limits";
import { fraction } from "../../../src/domain/quantity";

const e30 = fraction(0.3);

/** An invented car: six injectors of 550 cc/min, 300 kW. */
const full: FuelSystem = {
	injectorFlowCcPerMin: 550,
	injectorRatedKPa: 300,
	injectorFullLoadKPa: 300,
	injectorCount: 6,
	dutyLimit: 0.85,
	pumpFlowLPerH: 190,
	powerKW: 300,
	consumptionGPerKWh: 330,
	trimAuthority: 0.25,
	commandedLambda: 0.8,
	leanestLambda: 0.86,
};

/** Air that a litre burns, kg, written down once more: 14.6 · 0.745 and 9.0 · 0.789. */
const air = (content: number) => 10.877 + (7.101 - 10.877) * content;
const rootOfDensity = (content: number) => Math.sqrt((0.745 + 0.044 * content) / 0.745);

/** The content at which a rising function reaches a value, by halving, cut to 0 … 1. */
function reached(demand: (content: number) => number, value: number): number {
	let [low, high] = [0, 1];
	for (let i = 0; i < 50; i++) {
		const middle = (low + high) / 2;
		if (demand(middle) <= value) low = middle;
		else high = middle;
	}
	return low;
}

test("limitsOf gives the medians that the card says, by hand", () => {
	const { limits } = limitsOf(full, e30);
	const gasolineLPerH = (300 * 330) / 745;
	const injectors = (6 * 550 * 0.06 * 0.85) / gasolineLPerH;
	expect(limits.injectors?.median).toBeCloseTo(
		reached((content) => (air(0) / air(content)) * rootOfDensity(content), injectors),
		6,
	);
	expect(limits.pump?.median).toBeCloseTo(
		reached((content) => air(0) / air(content), 190 / gasolineLPerH),
		6,
	);
	expect(limits.trim?.median).toBeCloseTo(
		reached((content) => air(0.3) / air(content), 1.25),
		6,
	);
	expect(limits.lambda?.median).toBeCloseTo(
		reached((content) => air(0.3) / air(content), 0.86 / 0.8),
		6,
	);
});

test("limitsOf takes 25 % of trim from an E10 calibration as far as E66 and from an E30 calibration as far as E82", () => {
	expect(limitsOf({ trimAuthority: 0.25 }, fraction(0.1)).limits.trim?.median).toBeCloseTo(0.656, 3);
	expect(limitsOf({ trimAuthority: 0.25 }, e30).limits.trim?.median).toBeCloseTo(0.816, 3);
});

/** Numbers and normals of our own: mulberry32 and Box–Muller. */
function normals(seed: number): () => number {
	let state = seed;
	const uniform = () => {
		state = (state + 0x6d2b79f5) | 0;
		let t = Math.imul(state ^ (state >>> 15), state | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return (((t ^ (t >>> 14)) >>> 0) + 0.5) / 4294967296;
	};
	return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

const spreads = {
	injectorFlow: 0.04,
	pressure: 0.06,
	pumpFlow: 0.05,
	power: 0.06,
	consumption: 0.04,
	trim: 0.03,
	lambda: 0.02,
};

/** Injectors and pump just as tight as each other, and most of the doubt in what the engine wants. */
const alike: FuelSystem = {
	...full,
	injectorFlowCcPerMin: 600,
	pumpFlowLPerH: 182,
	leanestLambda: 0.95,
	trimAuthority: 0.5,
};
const sharedDoubt = {
	...spreads,
	injectorFlow: 0.015,
	pressure: 0.02,
	pumpFlow: 0.015,
	power: 0.06,
	consumption: 0.06,
};

test.each([
	{ car: "whose limits lie apart", system: full, sds: spreads },
	{ car: "whose injectors and pump share their doubt", system: alike, sds: sharedDoubt },
])("limitsOf agrees with forty thousand copies of a car $car", ({ system, sds }) => {
	const draw = normals(7);
	const size = 40_000;
	const found: Record<LimitKind | "least", number[]> = { injectors: [], pump: [], trim: [], lambda: [], least: [] };
	// Demand from content in small steps, instead of 160,000 halvings.
	const grid = Array.from({ length: 4001 }, (_, i) => i / 4000);
	const table = grid.map((content) => (air(0) / air(content)) * rootOfDensity(content));
	const plain = (demand: number) => (air(0) - air(0) / demand) / (air(0) - air(1));
	const onTable = (demand: number) => {
		let [low, high] = [0, 4000];
		while (low < high) {
			const middle = (low + high + 1) >> 1;
			if (table[middle] <= demand) low = middle;
			else high = middle - 1;
		}
		return grid[low];
	};
	const cut = (content: number) => Math.min(1, Math.max(0, content));
	const ofE30 = air(0) / air(0.3);
	const { injectorFlowCcPerMin = 0, pumpFlowLPerH = 0, trimAuthority = 0, leanestLambda = 0 } = system;
	for (let i = 0; i < size; i++) {
		const off = (sd: number) => Math.exp(sd * draw());
		const wanted = ((300 * 330) / 745) * off(sds.power) * off(sds.consumption);
		const flow = 6 * injectorFlowCcPerMin * 0.06 * 0.85 * off(sds.injectorFlow) * Math.sqrt(off(sds.pressure));
		const one = {
			injectors: cut(onTable(flow / wanted)),
			pump: cut(plain((pumpFlowLPerH * off(sds.pumpFlow)) / wanted)),
			trim: cut(plain(ofE30 * (1 + trimAuthority) * off(sds.trim))),
			lambda: cut(plain((ofE30 * leanestLambda * off(sds.lambda)) / 0.8)),
		};
		for (const [kind, content] of Object.entries(one)) found[kind as LimitKind].push(content);
		found.least.push(Math.min(...Object.values(one)));
	}
	for (const drawn of Object.values(found)) drawn.sort((a, b) => a - b);
	const quantile = (kind: LimitKind | "least", chance: number) => found[kind][Math.floor(chance * size)];
	const { limits, leanEdge } = limitsOf({ ...system, spreads: sds }, e30);
	for (const kind of ["injectors", "pump", "trim", "lambda"] as const) {
		// Sampling leaves about 0.002 in content at 5 %.
		expect(Math.abs((limits[kind]?.low ?? -1) - quantile(kind, 0.05))).toBeLessThan(0.006);
		expect(Math.abs((limits[kind]?.median ?? -1) - quantile(kind, 0.5))).toBeLessThan(0.004);
		expect(Math.abs((limits[kind]?.high ?? -1) - quantile(kind, 0.95))).toBeLessThan(0.006);
	}
	expect(Math.abs((leanEdge?.content ?? -1) - quantile("least", 0.05))).toBeLessThan(0.006);
});

test("limitsOf offers a lean edge that no limit's cautious end lies below, and says which binds", () => {
	const { limits, leanEdge } = limitsOf(full, e30);
	const lows = Object.values(limits).map((limit) => limit?.low ?? 1);
	expect(leanEdge?.content).toBeLessThanOrEqual(Math.min(...lows));
	expect(leanEdge?.content).toBeGreaterThan(Math.min(...lows) - 0.1);
	expect(limits[leanEdge?.binding ?? "trim"]?.low).toBe(Math.min(...lows));
	expect(leanEdge?.risk).toBe(0.05);
});

test("limitsOf offers the cautious end of the only limit there is", () => {
	const { limits, leanEdge } = limitsOf({ commandedLambda: 0.8, leanestLambda: 0.86 }, e30);
	expect(leanEdge?.binding).toBe("lambda");
	expect(leanEdge?.content).toBeCloseTo(limits.lambda?.low ?? -1, 6);
	expect(leanEdge?.belowCalibration).toBe(false);
});

test("limitsOf has no limit where the card, or the calibration, says too little", () => {
	expect(limitsOf({}, e30).limits).toEqual({ injectors: null, pump: null, trim: null, lambda: null });
	expect(limitsOf({}, e30).leanEdge).toBeNull();
	expect(limitsOf({}, e30).cautions).toEqual(["tunerDecides", "flowUnknown", "fullLoadUnknown"]);
	const without = (name: keyof FuelSystem) => {
		const { [name]: _, ...rest } = full;
		return limitsOf(rest, e30).limits;
	};
	expect(without("injectorFlowCcPerMin").injectors).toBeNull();
	expect(without("injectorCount").injectors).toBeNull();
	expect(without("pumpFlowLPerH").pump).toBeNull();
	expect(without("powerKW")).toMatchObject({ injectors: null, pump: null });
	expect(without("consumptionGPerKWh")).toMatchObject({ injectors: null, pump: null });
	expect(without("trimAuthority").trim).toBeNull();
	expect(without("commandedLambda").lambda).toBeNull();
	expect(without("leanestLambda").lambda).toBeNull();
	expect(limitsOf(full, null).limits).toMatchObject({ trim: null, lambda: null });
	expect(limitsOf(full, null).limits.pump).not.toBeNull();
});

test("limitsOf takes 80 % of duty and the flow as stated where duty and pressures are missing", () => {
	const { dutyLimit: _, injectorRatedKPa: __, ...bare } = full;
	expect(limitsOf(bare, e30).limits.injectors).toEqual(
		limitsOf({ ...full, dutyLimit: 0.8, injectorFullLoadKPa: 300 }, e30).limits.injectors,
	);
});

test("limitsOf lets injectors flow with the root of the pressure, once both pressures are known", () => {
	const { injectorRatedKPa: _, injectorFullLoadKPa: __, ...bare } = full;
	const median = (system: FuelSystem) => limitsOf(system, e30).limits.injectors?.median;
	const asStated = median(bare);
	expect(asStated).toBeLessThan(1);
	const pressed = { ...bare, injectorFlowCcPerMin: 275, injectorRatedKPa: 300, injectorFullLoadKPa: 1200 };
	expect(median(pressed)).toBeCloseTo(asStated ?? -1, 9);
	expect(median({ ...bare, injectorRatedKPa: 1200 })).toBe(asStated);
	expect(median({ ...bare, injectorFullLoadKPa: 1200 })).toBe(asStated);
});

test("limitsOf offers nothing where ample parts bind nowhere below pure ethanol", () => {
	const ample = { injectorFlowCcPerMin: 2000, injectorCount: 8, powerKW: 100, consumptionGPerKWh: 300 };
	const { limits, leanEdge } = limitsOf(ample, null);
	expect(limits.injectors).toEqual({ low: 1, median: 1, high: 1 });
	expect(leanEdge).toBeNull();
});

test("limitsOf says that a system falls short of its own calibration", () => {
	const small = { ...full, pumpFlowLPerH: 120 };
	const { limits, leanEdge } = limitsOf(small, e30);
	expect(limits.pump?.median).toBe(0);
	expect(leanEdge).toMatchObject({ content: 0, binding: "pump", belowCalibration: true });
});

test("limitsOf cautions that the tuner decides, and that spreads are the usual ones", () => {
	expect(limitsOf(full, e30).cautions).toEqual(["tunerDecides", "usualSpreads"]);
	expect(limitsOf({ ...full, spreads }, e30).cautions).toEqual(["tunerDecides"]);
	expect(limitsOf({ trimAuthority: 0.2, spreads: { trim: 0.02 } }, e30).cautions).toEqual([
		"tunerDecides",
		"flowUnknown",
		"fullLoadUnknown",
	]);
});

test("checkedFuelSystem refuses numbers that are no quantities, by name", () => {
	expect(() => checkedFuelSystem({ powerKW: 0 })).toThrow("powerKW must be more than zero, got 0");
	expect(() => checkedFuelSystem({ trimAuthority: Number.NaN })).toThrow("trimAuthority");
	expect(() => limitsOf({ spreads: { lambda: -1 } }, e30)).toThrow("lambda must be more than zero, got -1");
	expect(() => checkedFuelSystem({ dutyLimit: 1.2 })).toThrow("dutyLimit must be at most 1, got 1.2");
	expect(() => checkedFuelSystem({ pumpFlowLPerH: Infinity })).toThrow(
		"pumpFlowLPerH must be more than zero, got Infi",
	);
	expect(checkedFuelSystem({ dutyLimit: 1 })).toEqual({ dutyLimit: 1 });
});
