/** The words of the fuel-system card: its fields, the limits that come of it, and what has to be said with them. */
import type { LimitKind } from "../domain/engine/capability";
import { type FuelSystem, usualDutyLimit, usualSpreads } from "../domain/engine/fuelSystem";
import type { Caution, LeanEdge, Limit } from "../domain/engine/limits";
import { budgetWords } from "./calibrationForm";
import { exactPercent, percent, percentRange } from "./format";
import { type FieldName, typedField, unitOfField } from "./fuelSystemForm";
import type { ChosenUnits } from "./fuelSystemUnits";

const fieldNames: Readonly<Record<FieldName, string>> = {
	injectorFlowCcPerMin: "Flow of one injector",
	injectorRatedKPa: "Pressure at which that flow is stated",
	injectorFullLoadKPa: "Pressure across the injector at full load",
	injectorCount: "Number of injectors",
	dutyLimit: "Largest injector duty",
	pumpFlowLPerH: "Pump flow at full load",
	powerKW: "Largest power",
	consumptionGPerKWh: "Brake-specific consumption on gasoline",
	trimAuthority: "How far the trims can enrich",
	commandedLambda: "Lambda commanded at full load",
	leanestLambda: "Leanest lambda the tuner accepts there",
	injectorFlowSd: "Doubt of the injector flow",
	pressureSd: "Doubt of the pressure",
	pumpFlowSd: "Doubt of the pump flow",
	powerSd: "Doubt of the power",
	consumptionSd: "Doubt of the consumption",
	trimSd: "Doubt of the trims",
	lambdaSd: "Doubt of the lambda",
};

/** Name and unit. */
export function fieldLabel(name: FieldName, units: ChosenUnits): string {
	const unit = unitOfField(name, units);
	return unit === null ? fieldNames[name] : `${fieldNames[name]}, ${unit}`;
}

export function unitLabel(name: FieldName): string {
	return `Unit of “${fieldNames[name]}”`;
}

const usual = (sd: number) => `Empty counts as ${exactPercent(sd)}.`;

/** How a field is meant; null where its name says it. */
export function fieldHint(name: FieldName, units: ChosenUnits): string | null {
	switch (name) {
		case "injectorFlowCcPerMin":
			return units.injectorFlow === "lb/h"
				? "1\u00a0lb/h is taken for 10.5\u00a0cc/min, a density of 0.72\u00a0kg/L (common practice)."
				: null;
		case "injectorFullLoadKPa":
			return "Fuel pressure less manifold pressure. It counts only together with the one above.";
		case "dutyLimit":
			return `Empty counts as ${percent(usualDutyLimit)} (common practice: 80 to 85).`;
		case "pumpFlowLPerH":
			return "Off the pump’s own curve, at the fuel pressure and the voltage of full load.";
		case "powerKW":
			return "At the crankshaft; rollers under the wheels show less.";
		case "consumptionGPerKWh": {
			const unit = units.consumption;
			const range = (low: number, high: number) => `${roughly(low, units)} to ${roughly(high, units)}`;
			return `At that power: often ${range(275, 305)}\u00a0${unit} without boost, ${range(335, 395)} with it (common practice).`;
		}
		case "trimAuthority":
			return "Long and short trim together, before the engine gives up.";
		case "commandedLambda":
			return "By the flashed calibration, on the blend that it was made for.";
		case "leanestLambda":
			return "Larger is leaner. Only the tuner can say.";
		case "injectorFlowSd":
			return usual(usualSpreads.injectorFlow);
		case "pressureSd":
			return usual(usualSpreads.pressure);
		case "pumpFlowSd":
			return usual(usualSpreads.pumpFlow);
		case "powerSd":
			return usual(usualSpreads.power);
		case "consumptionSd":
			return usual(usualSpreads.consumption);
		case "trimSd":
			return usual(usualSpreads.trim);
		case "lambdaSd":
			return usual(usualSpreads.lambda);
		default:
			return null;
	}
}

function roughly(gPerKWh: number, units: ChosenUnits): string {
	return String(
		Number(Number(typedField("consumptionGPerKWh", gPerKWh, units)).toPrecision(units.consumption === "g/kWh" ? 3 : 2)),
	);
}

export const limitNames: Readonly<Record<LimitKind, string>> = {
	injectors: "Injectors",
	pump: "Fuel pump",
	trim: "Fuel trims",
	lambda: "Leanest lambda",
};

/** Where a limit lies; its range is told only with a plain one. */
export function limitWords({ median, low, high }: Limit): { readonly is: string; readonly range?: string } {
	const is = oddLimit(median, low, high);
	return is === null ? { is: `about ${percent(median)}`, range: percentRange(low, high) } : { is };
}

function oddLimit(median: number, low: number, high: number): string | null {
	if (low === 1) return "none, it is enough for pure ethanol";
	if (high === 0) return "not even gasoline is met";
	if (median === 1) return `most likely none, perhaps from ${percent(low)} on`;
	if (median === 0) return `most likely not even gasoline is met, at best ${percent(high)}`;
	return null;
}

/** What the card, or the car, does not say that the limit hangs on. */
export function missingWords(kind: LimitKind, system: FuelSystem, calibrated: boolean): string {
	const needed: Readonly<Record<LimitKind, readonly FieldName[]>> = {
		injectors: ["injectorFlowCcPerMin", "injectorCount", "powerKW", "consumptionGPerKWh"],
		pump: ["pumpFlowLPerH", "powerKW", "consumptionGPerKWh"],
		trim: ["trimAuthority"],
		lambda: ["commandedLambda", "leanestLambda"],
	};
	const missing = needed[kind].filter((name) => !Object.hasOwn(system, name)).map((name) => `“${fieldNames[name]}”`);
	if (!calibrated && (kind === "trim" || kind === "lambda")) missing.push("a calibration");
	return `not known: ${missing.join(", ")} missing`;
}

export const bindingWords: Readonly<Record<LimitKind, string>> = {
	injectors: "The injectors come first: open for as long as they may be, they deliver no more.",
	pump: "The fuel pump comes first: it delivers no more at that pressure.",
	trim: "The fuel trims come first: beyond them nothing corrects the mixture, even in closed loop.",
	lambda: "The leanest lambda comes first: beyond it full load runs leaner than the tuner accepts.",
};

export function edgeWords({ risk }: LeanEdge): string {
	return `All limits taken together, the real one is lower with a chance of ${budgetWords(risk)}: what the calibration accepts of too much ethanol.`;
}

/** -1, 0 or 1 as the first content lies below, at or above the second, in the tenths of a percent that forms hold. */
export function compareTenths(a: number, b: number): number {
	return Math.sign(Math.round(a * 1000) - Math.round(b * 1000));
}

/** How the edge stands to the window that there is; null where there is none. */
export function againstWindow(edge: number, upper: number | null): string | null {
	if (upper === null) return null;
	const end = exactPercent(upper);
	const order = compareTenths(edge, upper);
	if (order === 0)
		return `The calibration’s window ends at ${end} too: it is as wide as the fuel system surely allows.`;
	return order < 0
		? `The calibration’s window goes on to ${end}, further than the fuel system surely does.`
		: `The calibration’s window ends at ${end}, before the fuel system does. Your tuner may have other reasons for that: ask before you widen it.`;
}

export const shortOfCalibration = {
	fault: "That is less than the calibration was made for: stay out of boost until your tuner has looked at it.",
	why: "Either a number on the card is wrong, or the fuel system falls short of this very calibration. As the edge of its window it would make no sense, so it is not proposed.",
} as const;

/** The lean edge as a heading. */
export function edgeTitle(content: number): string {
	return content === 0 ? "Lean edge: not even gasoline is surely met" : `Lean edge: ${exactPercent(content)}`;
}

export function cautionWords(caution: Caution): string {
	switch (caution) {
		case "tunerDecides":
			return "Your tuner decides, then the car’s maker. Local law applies: in the United States blends above 15\u00a0% ethanol are lawful in flex-fuel vehicles only.";
		case "usualSpreads":
			return "Not all of these doubts are this car’s: where the card states none, the usual one is taken (common practice).";
		case "flowUnknown":
			return "Nothing is known of injectors and pump, and either may give out first.";
		case "fullLoadUnknown":
			return "The lambdas of full load are not on the card. Many engines do not carry learned trims into full load (13 of 25 cars screened, CRC E-87-1), so trims alone promise nothing there.";
	}
}
