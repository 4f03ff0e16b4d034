/** The words of the fuel-system card: its fields, the limits that come of it, and what has to be said with them. */
import type { LimitKind } from "../domain/engine/capability";
import { type FuelSystem, usualDutyLimit, usualSpreads } from "../domain/engine/fuelSystem";
import type { LeanEdge, Limit } from "../domain/engine/limits";
import { budgetWords } from "./calibrationForm";
import { exactPercent, percent, percentRange } from "./format";
import { type FieldName, inFieldUnit, unitOfField } from "./fuelSystemForm";
import type { ChosenUnits } from "./fuelSystemUnits";
import { typedNumber } from "./typedNumber";
import { fuelSystemWords } from "./words/fuelSystem";

/** Name and unit. */
export function fieldLabel(name: FieldName, units: ChosenUnits): string {
	const unit = unitOfField(name, units);
	const field = fuelSystemWords().fields[name];
	return unit === null ? field : `${field}, ${unit}`;
}

export function unitLabel(name: FieldName): string {
	const { unitOf, fields } = fuelSystemWords();
	return unitOf(fields[name]);
}

/** What counts where a doubt is left empty. */
const usualSpreadOf: Readonly<Partial<Record<FieldName, number>>> = {
	injectorFlowSd: usualSpreads.injectorFlow,
	pressureSd: usualSpreads.pressure,
	pumpFlowSd: usualSpreads.pumpFlow,
	powerSd: usualSpreads.power,
	consumptionSd: usualSpreads.consumption,
	trimSd: usualSpreads.trim,
	lambdaSd: usualSpreads.lambda,
};

/** How a field is meant; null where its name says it. */
export function fieldHint(name: FieldName, units: ChosenUnits): string | null {
	const { hints } = fuelSystemWords();
	const usual = usualSpreadOf[name];
	if (usual !== undefined) return hints.usual(exactPercent(usual));
	switch (name) {
		case "injectorFlowCcPerMin":
			return units.injectorFlow === "lb/h" ? hints.poundsPerHour : null;
		case "injectorFullLoadKPa":
			return hints.fullLoadPressure;
		case "dutyLimit":
			return hints.dutyLimit(percent(usualDutyLimit));
		case "pumpFlowLPerH":
			return hints.pumpFlow;
		case "powerKW":
			return hints.power;
		case "consumptionGPerKWh": {
			const range = (low: number, high: number) => [roughly(low, units), roughly(high, units)] as const;
			return hints.consumption(units.consumption, range(275, 305), range(335, 395));
		}
		case "trimAuthority":
		case "commandedLambda":
		case "leanestLambda":
			return hints[name];
		default:
			return null;
	}
}

function roughly(gPerKWh: number, units: ChosenUnits): string {
	const digits = units.consumption === "g/kWh" ? 3 : 2;
	return typedNumber(Number(inFieldUnit("consumptionGPerKWh", gPerKWh, units).toPrecision(digits)));
}

/** Where a limit lies; its range is told only with a plain one. */
export function limitWords({ median, low, high }: Limit): { readonly is: string; readonly range?: string } {
	const is = oddLimit(median, low, high);
	if (is !== null) return { is };
	return { is: fuelSystemWords().about(percent(median)), range: percentRange(low, high) };
}

function oddLimit(median: number, low: number, high: number): string | null {
	const words = fuelSystemWords();
	if (low === 1) return words.enough;
	if (high === 0) return words.notEvenGasoline;
	if (median === 1) return words.likelyEnough(percent(low));
	return median === 0 ? words.likelyNotEvenGasoline(percent(high)) : null;
}

/** What the card, or the car, does not say that the limit hangs on. */
export function missingWords(kind: LimitKind, system: FuelSystem, calibrated: boolean): string {
	const needed: Readonly<Record<LimitKind, readonly FieldName[]>> = {
		injectors: ["injectorFlowCcPerMin", "injectorCount", "powerKW", "consumptionGPerKWh"],
		pump: ["pumpFlowLPerH", "powerKW", "consumptionGPerKWh"],
		trim: ["trimAuthority"],
		lambda: ["commandedLambda", "leanestLambda"],
	};
	const { missing, fields } = fuelSystemWords();
	const names = needed[kind].filter((name) => !Object.hasOwn(system, name)).map((name) => fields[name]);
	return missing(names, !calibrated && (kind === "trim" || kind === "lambda"));
}

export function edgeWords({ risk }: LeanEdge): string {
	return fuelSystemWords().edgeRisk(budgetWords(risk));
}

/** -1, 0 or 1 as the first content lies below, at or above the second, in the tenths of a percent that forms hold. */
export function compareTenths(a: number, b: number): number {
	return Math.sign(Math.round(a * 1000) - Math.round(b * 1000));
}

/** How the edge stands to the window that there is; null where there is none. */
export function againstWindow(edge: number, upper: number | null): string | null {
	if (upper === null) return null;
	const { same, further, before } = fuelSystemWords().window;
	const order = compareTenths(edge, upper);
	return (order === 0 ? same : order < 0 ? further : before)(exactPercent(upper));
}

/** The lean edge as a heading. */
export function edgeTitle(content: number): string {
	const words = fuelSystemWords();
	return content === 0 ? words.edgeNone : words.edge(exactPercent(content));
}
