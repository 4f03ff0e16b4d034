/**
 * npm run study: what following the plan brings, beside the rule of thumb "three parts gasoline, one part flex fuel" (common
 * practice), on simulated stops whose truth is known. Both drivers meet the same pumps and drive the same.
 */
import { absorb, initialBelief } from "../../src/domain/estimator/absorb";
import type { Belief } from "../../src/domain/estimator/belief";
import { estimateOf } from "../../src/domain/estimator/estimate";
import { largeSample, smallSample } from "../../src/domain/estimator/sampleSize";
import type { ReadingEvent, StartEvent, TankEvent } from "../../src/domain/event";
import { planned } from "../../src/domain/plan/plan";
import type { Fullness, Planned, PlanRequest, Visit } from "../../src/domain/plan/request";
import { planFor } from "../../src/domain/plan/search";
import { standingAt } from "../../src/domain/plan/standing";
import { contentRange, type Fraction, fraction, litres } from "../../src/domain/quantity";
import { bruteForcePlan } from "../domain/plan/bruteForce";
import { type Decided, driveTo, fillId, gaugeOf, pour, tankOf } from "./driver";
import { type Stop, type World, worldOf } from "./world";

const window = contentRange(0.26, 0.34);
const budget = fraction(0.05);
const step = 0.5;

/** How stops ended: in truth, and as the account had foretold it. */
export interface Tally {
	stops: number;
	below: number;
	inside: number;
	above: number;
	/** Sums of the chances that the plans stated. */
	statedBelow: number;
	statedAbove: number;
	/** Plans of fixed amounts poured as planned; those over the lean budget in the account then, though the plan kept it. */
	fixed: number;
	fixedOver: number;
	/** The same to the click: how much goes in tells of the level, which the plan could not know. */
	click: number;
	clickOver: number;
	/** Plans that say themselves that nothing keeps the lean budget. */
	lean: number;
	/** Searches held against trying every plan, and those that found the same. */
	searched: number;
	sameAsBruteForce: number;
}

export interface Study {
	readonly planned: Tally;
	readonly measured: Tally;
	readonly thumb: Tally;
}

export interface Extent {
	readonly cars: number;
	/** Of each car. */
	readonly stops: number;
	/** Accounts that count as past their youth from the start: a quarter of the particles, and of the time. */
	readonly aged: boolean;
}

export function study({ cars, stops, aged }: Extent): Study {
	const [asPlanned, measured, thumb] = [tally(), tally(), tally()];
	for (let n = 0; n < cars; n++) {
		const world = worldOf(n, stops);
		const { id, tank } = world.car;
		const size = aged ? smallSample : largeSample;
		const started = absorb(initialBelief(id, tank, size), startOf(world), tank, size).belief;
		const belief = { ...started, age: aged ? 100 : 0 };
		byThumb(world, thumb);
		byPlan(world, belief, asPlanned, false);
		byPlan(world, belief, measured, true);
	}
	return { planned: asPlanned, measured, thumb };
}

function tally(): Tally {
	return {
		...{ stops: 0, below: 0, inside: 0, above: 0, statedBelow: 0, statedAbove: 0 },
		...{ fixed: 0, fixedOver: 0, click: 0, clickOver: 0, lean: 0, searched: 0, sameAsBruteForce: 0 },
	};
}

function end(result: Tally, content: number): void {
	result.stops++;
	result[content < window[0] ? "below" : content > window[1] ? "above" : "inside"]++;
}

/** A quarter of what seems to fit is flex fuel, poured first; gasoline does the rest. */
function byThumb(world: World, result: Tally): void {
	const truth = tankOf(world);
	for (const stop of world.stops) {
		driveTo(truth, stop, world);
		const gauge = gaugeOf(truth, stop.gaugeError, world);
		const room = (1 - (gauge ?? 0)) * world.car.tank.capacityL;
		const asked = askedAt(stop, gauge, world);
		const quarter = Math.round((asked.kind === "litres" ? asked.litres : room) / 4 / step) * step;
		const rest = asked.kind === "litres" ? asked.litres - quarter : Infinity;
		pour(truth, stop, world, [of(world.flexFuel, quarter), of(world.gasoline, rest)], gauge);
		end(result, truth.content);
	}
}

/** The account is kept, and what it recommends is poured. `measures`: every fourth stop the pump's flex fuel, every third the tank. */
function byPlan(world: World, start: Belief, result: Tally, measures: boolean): void {
	const { tank } = world.car;
	const truth = tankOf(world);
	let belief = start;
	const note = (event: TankEvent) => {
		belief = absorb(belief, event, tank).belief;
	};
	for (const [i, stop] of world.stops.entries()) {
		driveTo(truth, stop, world);
		const gauge = gaugeOf(truth, stop.gaugeError, world);
		if (measures && i % 4 === 0) note(pumpSample(stop, world));
		const { asked, found } = plannedAt(belief, stop, gauge, world);
		if (!measures) compare(belief, visitOf(stop, gauge), asked, world, result);
		const decided = found.plan.pours.map(({ product, litres, toClick }) => of(product, toClick ? Infinity : litres));
		const { fills, cut } = pour(truth, stop, world, decided, gauge);
		for (const fill of fills) note(fill);
		end(result, truth.content);
		result.statedBelow += found.plan.chances.below;
		result.statedAbove += found.plan.chances.above;
		count(result, found, belief, cut);
		if (measures && i % 3 === 0) note(tankReading(stop, truth.content));
	}
}

/** The plan as asked; where that does not fit, for as much as does. */
function plannedAt(belief: Belief, stop: Stop, gauge: Fraction | null, world: World) {
	const ids = [fillId(stop, 0), fillId(stop, 1)];
	let asked = askedAt(stop, gauge, world);
	for (;;) {
		const found = planned(belief, visitOf(stop, gauge), requestOf(asked, world), world.car.tank, ids);
		if (found.ok) return { asked, found: found.value };
		if (found.error.code !== "doesNotFit") throw new Error(`${stop.id} can't be planned: ${found.error.code}`);
		const fits = Math.floor(found.error.room / step) * step;
		// Where hardly anything is sure to fit, the nozzle has to tell.
		asked = fits > 5 ? { kind: "litres", litres: litres(fits) } : { kind: "click" };
	}
}

function count(result: Tally, { plan, verdict }: Planned, after: Belief, cut: boolean): void {
	if (verdict === "lean") {
		result.lean++;
		return;
	}
	if (cut) return;
	const over = (estimateOf(after, window).above ?? 0) > budget ? 1 : 0;
	if (plan.pours.some(({ toClick }) => toClick)) {
		result.click++;
		result.clickOver += over;
	} else {
		result.fixed++;
		result.fixedOver += over;
	}
}

/** Holds the search against trying every plan, on one small sample. */
function compare(belief: Belief, visit: Visit, asked: Fullness, world: World, result: Tally): void {
	const request = requestOf(asked, world);
	const standing = standingAt(belief, visit, request.offers, world.car.tank, 2 ** 10);
	const brute = bruteForcePlan(standing, request);
	const found = planFor(standing, request);
	const said = found.ok
		? found.value.plan.pours.map(({ product, litres }) => `${product.id} ${litres.toFixed(4)}`).join()
		: found.error.code;
	const truth =
		typeof brute === "string"
			? brute
			: brute.products.map((product, i) => `${product} ${brute.litres[i].toFixed(4)}`).join();
	result.searched++;
	if (said === truth) result.sameAsBruteForce++;
}

function of(product: Decided["product"], amount: number): Decided {
	return { product, litres: amount };
}

function askedAt({ share }: Stop, gauge: Fraction | null, { car }: World): Fullness {
	if (share === null) return { kind: "click" };
	const room = (1 - (gauge ?? 0.3)) * car.tank.capacityL;
	return { kind: "litres", litres: litres(Math.round((share * room) / step) * step) };
}

function requestOf(fullness: Fullness, { gasoline, flexFuel }: World): PlanRequest {
	return {
		offers: [{ product: gasoline }, { product: flexFuel }],
		fullness,
		target: { window, aim: fraction(0.3), budgets: { lean: budget, knock: budget } },
		handling: { step: litres(step), minimum: litres(1) },
		pours: 2,
	};
}

function visitOf({ id, at, place }: Stop, gauge: Fraction | null): Visit {
	return { stop: id, at, place, ...(gauge === null ? {} : { gauge }) };
}

function startOf(world: World): StartEvent {
	const gauge = gaugeOf(tankOf(world), world.gaugeError, world);
	return {
		kind: "start",
		id: `${world.car.id} start`,
		at: new Date(1.75e12).toISOString(),
		contents: { range: world.gasoline.range },
		...(gauge === null ? {} : { gauge }),
	};
}

/** Water tube on the pump's flex fuel, on arrival. */
function pumpSample({ id, at, place, flexFuel, readingErrors, rubbish }: Stop, world: World): ReadingEvent {
	const sd = 0.03;
	const value = fraction(Math.min(1, Math.max(0, rubbish[0] ?? flexFuel + sd * readingErrors[0])));
	const early = new Date(Date.parse(at) - 60_000).toISOString();
	return { kind: "reading", of: "pump", id: `${id} sample`, at: early, place, product: world.flexFuel, value, sd };
}

/** Analyser on the tank, an hour later. */
function tankReading({ id, at, readingErrors, rubbish }: Stop, content: number): ReadingEvent {
	const sd = 0.025;
	const value = fraction(Math.min(1, Math.max(0, rubbish[1] ?? content + sd * readingErrors[1])));
	const later = new Date(Date.parse(at) + 3_600_000).toISOString();
	return { kind: "reading", of: "tank", id: `${id} reading`, at: later, value, sd };
}

export async function main([cars = "100", stops = "10"]: string[]): Promise<number> {
	const result = study({ cars: Number(cars), stops: Number(stops), aged: false });
	say(
		`${Number(cars) * Number(stops)} stops of ${cars} cars, % of stops`,
		"inside",
		"above, lean",
		"below",
		"stated above",
		"stated below",
	);
	for (const [name, of] of [
		["rule of thumb, three to one", result.thumb],
		["the plan", result.planned],
		["the plan, measuring now and then", result.measured],
	] as const) {
		const share = (amount: number) => ((100 * amount) / of.stops).toFixed(1);
		const stated = of === result.thumb ? ["", ""] : [share(of.statedAbove), share(of.statedBelow)];
		say(name, share(of.inside), share(of.above), share(of.below), ...stated);
	}
	for (const [name, of] of [
		["The plan", result.planned],
		["Measuring now and then", result.measured],
	] as const) {
		say(`\n${name}`, "plans", "of them");
		say("  fixed amounts poured as planned: over the lean budget then", `${of.fixed}`, `${of.fixedOver}`);
		say("  to the click as planned: over it once the amount is known", `${of.click}`, `${of.clickOver}`);
		say("  nothing keeps the lean budget", `${of.stops}`, `${of.lean}`);
		if (of.searched > 0) say("  the same as trying every plan", `${of.searched}`, `${of.sameAsBruteForce}`);
	}
	return 0;
}

function say(...cells: string[]): void {
	console.log(cells.map((cell, i) => (i === 0 ? cell.padEnd(60) : cell.padStart(14))).join(""));
}
