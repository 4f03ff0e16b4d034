/** "How much of each?", answered from an open account: loaded when first asked. */
import { ascending, type Belief, type Column } from "../domain/estimator/belief";
import { litresForOne } from "../domain/estimator/leg";
import { quantilesOf } from "../domain/estimator/quantile";
import { burnFirst, type Drive, stages } from "../domain/plan/ahead";
import { after } from "../domain/plan/outcome";
import { type Found, plannedAt } from "../domain/plan/plan";
import type { PlanRequest } from "../domain/plan/request";
import type { Standing } from "../domain/plan/standing";
import { type Fraction, fraction } from "../domain/quantity";
import { ok } from "../domain/result";
import type { Calibration, Car, Tank } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import type { previewsOf } from "./previews";
import type { Otherwise, PlanAnswer, PlanAsk } from "./view";

/** How drivers come to the next stop: down to a quarter, a week later (common practice). */
const usualDrive: Drive = { gauge: fraction(0.25), days: 7 };

/** Null where no calibration says what to pump for. */
export async function answered(
	ask: PlanAsk,
	atPump: ReturnType<typeof previewsOf>["atPump"],
	car: Car,
): Promise<PlanAnswer | null> {
	const { tank } = car;
	const { visit, poured, instead, ids } = ask;
	const { belief, calibration: flashed } = await atPump(poured, visit.at, instead);
	const calibration = targetOf(car, flashed, ask);
	if (!calibration) return null;
	const request = requestFor(ask, calibration);
	const found = plannedAt(belief, visit, request, tank, ids);
	const short = found.ok ? found.value.planned.verdict !== "inside" : found.error.code === "full";
	return {
		planned: found.ok ? ok(found.value.planned) : found,
		calibration,
		dots: found.ok ? dotsAfter(found.value) : null,
		// With something poured this stop has begun: it is too late to burn anything before it.
		otherwise: ask.otherwise && short && poured.length === 0 ? otherwise(belief, ask, request, tank) : null,
	};
}

/** The calibration that the plan is to suit: the one asked for, else the one flashed. */
export function targetOf(car: Car, flashed: Calibration | null, { targetCalibration }: PlanAsk): Calibration | null {
	return car.calibrations.find(({ id }) => id === targetCalibration) ?? flashed;
}

export function requestFor({ offers, fullness, handling, ids }: PlanAsk, calibration: Calibration): PlanRequest {
	const { window, calibratedFor: aim } = calibration;
	const target = { window, aim, budgets: budgetsOf(calibration) };
	return { offers, fullness, handling, target, pours: ids.length > 1 ? 2 : 1 };
}

function otherwise(belief: Belief, { visit, ids }: PlanAsk, request: PlanRequest, tank: Tank): Otherwise {
	const burn = burnFirst(belief, visit, request, tank);
	const staged = stages(belief, visit, request, tank, usualDrive, ids);
	const perKm = litresPerKm(belief);
	return {
		burnFirst: burn,
		burnKm: burn === null || perKm === null ? null : burn / perKm,
		stages: staged.ok ? staged.value : [],
		drive: usualDrive,
	};
}

/** As the plan's chances were reckoned: on what the account will hold, else on what may fit until the click. */
function dotsAfter({ estimate, standing, pouring }: Found): readonly Fraction[] {
	return estimate ? estimate.dots : dotsIn(after(standing, pouring).content, standing);
}

function dotsIn(content: Column, { weight }: Standing): readonly Fraction[] {
	const quantile = quantilesOf(content, weight, ascending(content));
	return Array.from({ length: 20 }, (_, i) => quantile((2 * i + 1) / 40) as Fraction);
}

/** What the car burns of what is in the tank, L/km, by the medians; null until a leg was measured. */
function litresPerKm({ consumption, weight, content, order }: Belief): number | null {
	if (!consumption) return null;
	const median = quantilesOf(content, weight, order)(0.5) as Fraction;
	const gasoline = quantilesOf(consumption, weight, ascending(consumption))(0.5);
	return gasoline * litresForOne(median);
}
