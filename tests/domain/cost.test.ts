import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { costsOf } from "../../src/domain/cost";
import { type DistanceCost, distanceCostOf } from "../../src/domain/distanceCost";
import type { LogEvent } from "../../src/domain/event";
import { aFill, aStart, aVoid } from "../helpers/logs";

const e0 = { id: "gasoline-e0", range: [0, 0] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const brazil = { id: "gasoline-c", range: [0.29, 0.31] };
const tank = { capacityL: 50 } as never;

/** MJ a litre, from the DOE's heating values and the densities of fuel.ts, reckoned by hand. */
const gasolineHeat = 32.3628;
const ethanolHeat = 21.26355;

/** A fill on a day of June at its own stop. */
function fill(day: number, fields: Record<string, unknown>) {
	const at = `2026-06-${String(day).padStart(2, "0")}T12:00:00+02:00`;
	return aFill({ id: `f${day}`, stop: `s${day}`, at, product: e10, litres: 30, ...fields });
}

describe("costsOf()", () => {
	test("a stop costs its litres times their price, and nothing is said of one without all its prices", () => {
		const { stops, all } = costsOf([
			fill(2, { litres: 20, pricePerLitre: 1.5, place: "Harbour" }),
			fill(3, { id: "a", stop: "s", litres: 10, pricePerLitre: 1 }),
			fill(3, { id: "b", stop: "s", litres: 30, product: flex }),
		]);
		expect(stops.map(({ stop, cost, litres, place }) => ({ stop, cost, litres, place }))).toEqual([
			{ stop: "s2", cost: 30, litres: 20, place: "Harbour" },
			{ stop: "s", cost: null, litres: 40, place: null },
		]);
		expect(all).toMatchObject({ fills: 3, unpriced: 1, litres: 60, cost: 40, blends: 1, told: 0, ethanol: null });
	});

	test("months are those of the clock the driver wrote by", () => {
		const late = aFill({ id: "x", stop: "x", at: "2026-06-30T23:30:00-08:00", litres: 10, pricePerLitre: 2 });
		const early = aFill({ id: "y", stop: "y", at: "2026-07-01T09:00:00+02:00", litres: 5, pricePerLitre: 2 });
		expect(costsOf([late, early]).months.map(({ month, cost }) => [month, cost])).toEqual([
			["2026-06", 20],
			["2026-07", 10],
		]);
	});

	test("what is void costs nothing, and an empty log has no costs", () => {
		const paid = fill(2, { pricePerLitre: 1 });
		expect(costsOf([paid, aVoid({ target: paid.id })]).all).toMatchObject({ fills: 0, cost: 0, ethanol: null });
		expect(costsOf([])).toMatchObject({ stops: [], months: [] });
	});

	test("totals are the sums of the months, and shuffling the log changes nothing", () => {
		const price = fc.option(fc.double({ min: 0.01, max: 1e4, noNaN: true }), { nil: undefined });
		const drafts = fc.array(
			fc.record({
				month: fc.integer({ min: 1, max: 12 }),
				stop: fc.constantFrom("p", "q", "r", "s"),
				product: fc.constantFrom(e0, e10, flex),
				litres: fc.double({ min: 0.01, max: 200, noNaN: true }),
				price,
			}),
			{ maxLength: 12 },
		);
		fc.assert(
			fc.property(drafts, fc.infiniteStream(fc.nat()), (list, order) => {
				const events = list.map(({ month, stop, product, litres, price }, i) =>
					aFill({
						id: `f${i}`,
						// A stop is made in one month.
						stop: `${stop}${month}`,
						at: `2026-${String(month).padStart(2, "0")}-11T10:00:${String(i).padStart(2, "0")}Z`,
						product,
						litres,
						...(price === undefined ? {} : { pricePerLitre: price }),
					}),
				);
				const { all, months, stops } = costsOf(events);
				expect(months.reduce((sum, { cost }) => sum + cost, 0)).toBeCloseTo(all.cost, 4);
				expect(months.reduce((sum, { unpriced }) => sum + unpriced, 0)).toBe(all.unpriced);
				const byHand = list.reduce((sum, { litres, price = 0 }) => sum + litres * price, 0);
				expect(all.cost).toBeCloseTo(byHand, 4);
				const told = stops.flatMap(({ ethanol }) => ethanol ?? []);
				expect(all.told).toBe(told.length);
				expect(all.ethanol === null).toBe(told.length === 0);
				for (const of of ["extra", "least", "most"] as const)
					expect(all.ethanol?.[of] ?? 0).toBeCloseTo(
						told.reduce((sum, each) => sum + each[of], 0),
						4,
					);
				for (const { ethanol } of stops) {
					if (!ethanol) continue;
					expect(ethanol.least).toBeLessThanOrEqual(ethanol.extra + 1e-9);
					expect(ethanol.extra).toBeLessThanOrEqual(ethanol.most + 1e-9);
				}
				const keyed = events.map((event) => ({ event, key: order.next().value ?? 0 }));
				const shuffled = keyed.sort((a, b) => a.key - b.key).map(({ event }) => event);
				expect(costsOf(shuffled)).toEqual(costsOf(events));
			}),
		);
	});
});

describe("the ethanol's cost", () => {
	test("is what the blend cost beyond the same heat bought as gasoline, by the label's middle and ends", () => {
		const [{ ethanol }] = costsOf([
			fill(2, { id: "a", stop: "s", product: flex, litres: 10, pricePerLitre: 1.5 }),
			fill(2, { id: "b", stop: "s", product: e0, litres: 20, pricePerLitre: 2, toClick: true }),
		]).stops;
		const heat = (content: number) => gasolineHeat * (1 - content) + ethanolHeat * content;
		const extra = (content: number) => 15 - (10 * heat(content) * 2) / gasolineHeat;
		expect(ethanol?.extra).toBeCloseTo(extra(0.67), 3);
		expect(ethanol?.least).toBeCloseTo(extra(0.51), 3);
		expect(ethanol?.most).toBeCloseTo(extra(0.83), 3);
		expect(ethanol?.gasolinePerMJ).toBeCloseTo(2 / gasolineHeat, 6);
		expect(ethanol?.perMJ).toBeCloseTo(55 / (10 * heat(0.67) + 20 * gasolineHeat), 6);
	});

	test("is nothing where flex fuel is as much cheaper as it holds less heat, and negative where it is cheaper still", () => {
		const exact = { id: "exact", range: [0.7, 0.7] };
		const share = (gasolineHeat * 0.3 + ethanolHeat * 0.7) / gasolineHeat;
		const extraAt = (pricePerLitre: number) =>
			costsOf([fill(1, { product: e0, pricePerLitre: 2 }), fill(2, { product: exact, pricePerLitre })]).stops[1]
				.ethanol;
		expect(extraAt(2 * share)?.extra).toBeCloseTo(0, 4);
		expect(extraAt(1)?.extra).toBeLessThan(0);
	});

	test("goes by the stop's own gasoline, else by the place's of the last month, else by the last paid anywhere", () => {
		const against = (...before: LogEvent[]) =>
			costsOf([...before, fill(25, { product: flex, pricePerLitre: 1, place: "Harbour" })]).stops.at(-1)?.ethanol
				?.against.id;
		const there = fill(3, { pricePerLitre: 1.7, place: "Harbour" });
		const elsewhere = fill(4, { pricePerLitre: 1.8, place: "Mill Road" });
		const own = fill(25, { id: "own", pricePerLitre: 1.6, place: "Harbour", at: "2026-06-25T11:59:00+02:00" });
		const longAgo = { ...there, at: "2026-04-01T12:00:00+02:00" };
		const later = fill(26, { pricePerLitre: 1.9, place: "Harbour" });
		expect(against(there, elsewhere, own)).toBe("own");
		expect(against(there, elsewhere)).toBe("f3");
		expect(against(longAgo, elsewhere)).toBe("f4");
		expect(against(longAgo)).toBe("f3");
		expect(against(fill(3, {}))).toBeUndefined();
		expect(costsOf([fill(2, { product: flex, pricePerLitre: 1 }), later]).stops[0].ethanol).toBeNull();
	});

	test("is not told of gasoline alone, whatever the country calls so", () => {
		for (const product of [e0, e10, brazil])
			expect(costsOf([fill(1, { product, pricePerLitre: 1 })])).toMatchObject({
				stops: [{ ethanol: null }],
				all: { ethanol: null, blends: 0, told: 0 },
			});
		const held = costsOf([
			fill(1, { product: brazil, pricePerLitre: 1 }),
			fill(2, { product: flex, pricePerLitre: 1 }),
		]);
		expect(held.stops[1].ethanol?.against.id).toBe("f1");
	});
});

describe("distanceCostOf()", () => {
	const known = (result: ReturnType<typeof distanceCostOf>) => {
		if ("code" in result) throw new Error(`no cost, but ${result.code}`);
		return result satisfies DistanceCost;
	};
	const full = (day: number, odometerKm: number, litres: number, pricePerLitre?: number) =>
		fill(day, { toClick: true, odometerKm, litres, ...(pricePerLitre === undefined ? {} : { pricePerLitre }) });

	test("takes what was poured from click to click as burned, stops between them with it", () => {
		const between = fill(3, { litres: 10, pricePerLitre: 3 });
		const cost = known(distanceCostOf([full(1, 1000, 40, 9), between, full(5, 1500, 20, 2)], tank));
		expect(cost).toMatchObject({ by: "clicks", km: 500, litres: 30, unpriced: 0, unbelievable: 0 });
		expect(cost.perKm).toBeCloseTo(70 / 500, 12);
		// Two clicks of 0.02 of 50 L each: 1.414 L, 1.645 times that for nine in ten.
		expect(cost.high - cost.perKm).toBeCloseTo((((1.6449 * Math.SQRT2) / 30) * 70) / 500, 5);
		expect(cost.perKm - cost.low).toBeCloseTo(cost.high - cost.perKm, 12);
	});

	test("is the surer the longer it runs, for all clicks but the first and the last cancel", () => {
		const run = (stops: number) =>
			known(
				distanceCostOf(
					Array.from({ length: stops }, (_, i) => full(i + 1, 1000 + 400 * i, 30, 2)),
					tank,
				),
			);
		expect(run(9).perKm).toBeCloseTo(run(2).perKm, 12);
		expect(run(9).high - run(9).low).toBeCloseTo((run(2).high - run(2).low) / 8, 12);
	});

	test("leaves out stretches without a price and odometers that cannot be, and counts them", () => {
		const events = [full(1, 1000, 30, 2), full(2, 1400, 30, 2), full(3, 1800, 30), full(4, 22000, 30, 2)];
		const cost = known(distanceCostOf([...events, full(5, 2600, 30, 2), full(6, 3000, 30, 2)], tank));
		expect(cost).toMatchObject({ km: 800, litres: 60, unpriced: 1, unbelievable: 2 });
		expect(cost.perKm).toBeCloseTo(120 / 800, 12);
	});

	test("knows nothing across a tank that was begun anew", () => {
		const anew = aStart({ at: "2026-06-02T12:00:00+02:00" });
		expect(distanceCostOf([full(1, 1000, 30, 2), anew, full(3, 1400, 30, 2)], tank)).toEqual({
			code: "noOdometer",
			stops: 1,
		});
		const after = [full(1, 1000, 30, 2), anew, full(3, 1400, 30, 2), full(4, 1700, 30, 2)];
		expect(known(distanceCostOf(after, tank))).toMatchObject({ km: 300, litres: 30 });
	});

	test("without clicks is bounded by the tank's size, and holds every truth the tank allows", () => {
		const litres = fc.double({ min: 5, max: 45, noNaN: true });
		const share = fc.double({ min: 0, max: 1, noNaN: true });
		let bounded = 0;
		fc.assert(
			fc.property(fc.array(fc.tuple(litres, share), { minLength: 3, maxLength: 9 }), (fills) => {
				let [level, burned, odometerKm] = [20, 0, 5000];
				let burnedAtFirst = 0;
				const events = fills.map(([pour, part], i) => {
					// Burned down to a level that still takes what is poured.
					const before = part * Math.min(level, 54 - pour);
					burned += level - before;
					odometerKm += (level - before) / 0.08 + 1e-3;
					level = before + pour;
					if (i === 0) burnedAtFirst = burned;
					return fill(i + 1, { litres: pour, odometerKm, pricePerLitre: 2 });
				});
				const cost = distanceCostOf(events, tank);
				if ("code" in cost) return;
				bounded++;
				const perKm = (2 * (burned - burnedAtFirst)) / cost.km;
				if (cost.from !== events[0].at || cost.to !== events[events.length - 1].at) return;
				expect(cost.by).toBe("tank");
				expect(cost.low).toBeLessThanOrEqual(perKm + 1e-6);
				expect(cost.high).toBeGreaterThanOrEqual(perKm - 1e-6);
			}),
		);
		expect(bounded).toBeGreaterThan(10);
	});

	test("says why there is none", () => {
		const code = (...events: LogEvent[]) => {
			const result = distanceCostOf(events, tank);
			return "code" in result ? result.code : "known";
		};
		const stop = (day: number, odometerKm: number, litres: number) =>
			fill(day, { odometerKm, litres, pricePerLitre: 2 });
		expect(code()).toBe("noOdometer");
		expect(code(full(1, 1000, 30, 2))).toBe("noOdometer");
		expect(code(full(1, 1000, 30, 2), full(2, 1400, 30))).toBe("noPrice");
		expect(code(full(1, 1000, 30, 2), full(2, 900, 30, 2))).toBe("unbelievable");
		expect(code(full(1, 1000, 30, 2), full(2, 20000, 30, 2))).toBe("unbelievable");
		expect(code(stop(1, 1000, 10), stop(2, 1200, 10))).toBe("tooLittle");
		expect(code(stop(1, 1000, 40), stop(2, 1400, 40))).toBe("known");
	});
});
