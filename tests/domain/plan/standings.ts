/** Standings and requests made by hand or by chance, of few particles. */
import fc from "fast-check";
import type { PlanRequest } from "../../../src/domain/plan/request";
import type { Standing } from "../../../src/domain/plan/standing";
import { seedsFor, uniform } from "../../../src/domain/random";

type Fields = Record<string, unknown>;

export const e10 = { id: "e10", range: [0.09, 0.1] } as never;
export const flex = { id: "flex", range: [0.51, 0.83] } as never;

/** Particles one by one: level, L, content, room, L, and what each offer's nozzle gives. */
export function aStanding(...particles: readonly (readonly [number, number, number, ...number[]])[]): Standing {
	const offers = particles[0].length - 3;
	return {
		weight: new Float32Array(particles.length).fill(1),
		level: Float32Array.from(particles, ([level]) => level),
		content: Float32Array.from(particles, ([, content]) => content),
		room: Float64Array.from(particles, ([, , room]) => room),
		delivered: Array.from({ length: offers }, (_, i) => Float32Array.from(particles, (particle) => particle[3 + i])),
	};
}

/** E10 and flex fuel to the click, for 26 to 34 %. */
export function aRequest(fields: Fields = {}): PlanRequest {
	return {
		offers: [{ product: e10 }, { product: flex }],
		fullness: { kind: "click" },
		target: aTarget(),
		handling: { step: 0.5, minimum: 0 },
		pours: 2,
		...fields,
	} as never;
}

export function aTarget(fields: Fields = {}) {
	return { window: [0.26, 0.34], aim: 0.3, budgets: { lean: 0.05, knock: 0.05 }, ...fields };
}

/** Every kind of standing and request, near enough: flat and spread, cheap and dear, full and empty, hopeless and easy. */
export const situations = fc.nat().map((seed) => {
	const seeds = seedsFor(`situation ${seed}`);
	const u = (low = 0, high = 1) => low + (high - low) * uniform(seeds);
	const one = <T>(...of: T[]) => of[Math.floor(u(0, of.length))];

	const capacity = one(12, 60);
	const spread = one(0, 0.1, 1);
	const around = (middle: number, reach: number, most = Infinity) => {
		return () => Math.min(most, Math.max(0, middle + spread * reach * u(-1, 1)));
	};
	const nozzles = Array.from({ length: one(1, 2, 2, 3, 4) }, (_, i) =>
		i % 2 === 0 ? around(u(0, 0.15), 0.05, 1) : around(u(0.45, 0.85), 0.15, 1),
	);
	const content = around(u(0, 0.6), 0.2, 1);
	const level = around(one(0, u(0, capacity / 2), u(0, capacity), capacity), capacity / 3, capacity * 1.05);
	const full = around(capacity, capacity / 20);
	const particles = Array.from({ length: 2 ** one(3, 5, 7, 9) }, () => {
		const before = level();
		return [before, content(), full() - before, ...nozzles.map((nozzle) => nozzle())] as [number, number, number];
	});
	const standing = aStanding(...particles);
	const weight = u() < 0.5 ? standing.weight : standing.weight.map(() => (1 + Math.floor(u(0, 64))) / 64);

	const kind = one("click", "litres", "money");
	const priced = one("all", "alike", kind === "money" ? "all" : "none", one("all", "some"));
	const price = (i: number) => {
		if (priced === "none" || (priced === "some" && i === 0)) return {};
		return { pricePerLitre: priced === "alike" ? 1.5 : Math.round(u(50, 300)) / 100 };
	};
	const handling = one(
		{ step: 0.5, minimum: 0 },
		{ step: 1, minimum: 5 },
		{ step: 0.378541, minimum: 1 },
		{ step: 3, minimum: 2 },
	);
	const fullness = {
		click: { kind },
		litres: { kind, litres: handling.step * Math.round(u(0, one(0.3, 1) * capacity) / handling.step) },
		money: { kind, amount: Math.round(u(0, 150 * capacity)) / 100 },
	}[kind];
	const window = one([0.26, 0.34], [0.26, 0.34], [0.29, 0.31], [0, 0.12], [0.6, 0.9], [0, 0.05]);
	const budgets = { lean: one(0, 0.02, 0.05, 0.2, 1), knock: one(0.05, 0.3) };
	const request = aRequest({
		offers: nozzles.map((_, i) => ({ product: { id: `offer ${i}`, range: [0, 1] }, ...price(i) })),
		fullness,
		target: aTarget({ window, aim: (window[0] + window[1]) / 2, budgets }),
		handling,
		pours: one(1, 2, 2, 2),
	});
	return { request, standing: { ...standing, weight } };
});
