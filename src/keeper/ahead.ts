/** "How much of each?", answered from an open account: loaded when first asked. */
import { absorb } from "../domain/estimator/absorb";
import { ascending, type Belief, type Column } from "../domain/estimator/belief";
import { estimateOf } from "../domain/estimator/estimate";
import { quantilesOf } from "../domain/estimator/quantile";
import { heatPerLitre } from "../domain/fuel";
import { burnFirst, type Drive, stages } from "../domain/plan/ahead";
import { after } from "../domain/plan/outcome";
import { type Found, fillsOf, plannedAt } from "../domain/plan/plan";
import type { PlanRequest } from "../domain/plan/request";
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
	{ tank, calibrations }: Car,
): Promise<PlanAnswer | null> {
	const { visit, poured, instead, ids } = ask;
	const { belief, calibration: flashed } = await atPump(poured, visit.at, instead);
	const calibration = calibrations.find(({ id }) => id === ask.targetCalibration) ?? flashed;
	if (!calibration) return null;
	const request = requestFor(ask, calibration);
	const found = plannedAt(belief, visit, request, tank, ids);
	const short = found.ok ? found.value.planned.verdict !== "inside" : found.error.code === "full";
	return {
		planned: found.ok ? ok(found.value.planned) : found,
		calibration,
		dots: found.ok ? dotsAfter(belief, ask, found.value, tank) : null,
		// With something poured this stop has begun: it is too late to burn anything before it.
		otherwise: ask.otherwise && short && poured.length === 0 ? otherwise(belief, ask, request, tank) : null,
	};
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

/** As the plan's chances were reckoned: to the click on what may fit, else on what the account will hold. */
function dotsAfter(belief: Belief, { visit, ids }: PlanAsk, found: Found, tank: Tank): readonly Fraction[] {
	const { plan } = found.planned;
	if (plan.pours.some(({ toClick }) => toClick)) return dotsIn(after(found.standing, found.pouring).content, found);
	const fills = fillsOf(plan, visit, ids);
	return estimateOf(
		fills.reduce((reached, fill) => absorb(reached, fill, tank).belief, belief),
		null,
	).dots;
}

function dotsIn(content: Column, { standing }: Found): readonly Fraction[] {
	const quantile = quantilesOf(content, standing.weight, ascending(content));
	return Array.from({ length: 20 }, (_, i) => quantile((2 * i + 1) / 40) as Fraction);
}

/** What the car burns of what is in the tank, L/km, by the medians; null until a leg was measured. */
function litresPerKm({ consumption, weight, content, order }: Belief): number | null {
	if (!consumption) return null;
	const median = quantilesOf(content, weight, order)(0.5) as Fraction;
	const gasoline = quantilesOf(consumption, weight, ascending(consumption))(0.5);
	// As much heat, as much road.
	return (gasoline * heatPerLitre(fraction(0))) / heatPerLitre(median);
}
