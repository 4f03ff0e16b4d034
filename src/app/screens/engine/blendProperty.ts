/** What the blend does, property by property: numbers for every content, of the usual gasoline and of unlike ones. */
import { injectorDemand, openLoopLambda, pumpDemand, trimNeeded } from "../../../domain/engine/fuelling";
import { type Gasoline, usualGasoline } from "../../../domain/engine/gasoline";
import { propertiesOf } from "../../../domain/engine/properties";
import { type Fraction, fraction } from "../../../domain/quantity";

export type PropertyId =
	| "airFuelRatio"
	| "lambda"
	| "injectors"
	| "pump"
	| "trim"
	| "heat"
	| "cooling"
	| "ron"
	| "mon"
	| "density"
	| "vapourPressure";

export interface BlendProperty {
	readonly id: PropertyId;
	readonly of: (content: Fraction, base?: Gasoline) => number;
	/** Two gasolines between which most lie; null where that hardly matters or nobody knows. */
	readonly unlike: readonly [Gasoline, Gasoline] | null;
}

export type GroupId = "fuelling" | "heat" | "knock" | "liquid";

export interface PropertyGroup {
	readonly id: GroupId;
	readonly properties: readonly BlendProperty[];
}

const gasoline = (fields: Partial<Gasoline>): Gasoline => ({ ...usualGasoline, ...fields });

/** EN 228: 720 to 775 kg/m³ (from memory). */
const byDensity = [gasoline({ density: 0.72 }), gasoline({ density: 0.775 })] as const;
/** NREL, OSTI 1242469. */
const byHeatOfVaporisation = [gasoline({ heatOfVaporisation: 325 }), gasoline({ heatOfVaporisation: 375 })] as const;
/** The plain rule, and what FACE gasolines F and G of RON 94 and 96 had at most (doi 10.1021/acs.energyfuels.8b00556). */
const byInteraction = [usualGasoline, gasoline({ ronInteraction: 10, monInteraction: 4 })] as const;
/** From summer to winter, as far as the curve was fitted. */
const byVapourPressure = [gasoline({ vapourPressure: 48 }), gasoline({ vapourPressure: 90 })] as const;

/** `commanded`: the lambda that the calibration asks for. Without a calibration all that hangs on one is left out. */
export function propertyGroups(calibratedFor: Fraction | null, commanded: number): readonly PropertyGroup[] {
	const ofCalibration: readonly BlendProperty[] =
		calibratedFor === null
			? []
			: [
					{ id: "lambda", of: (content) => openLoopLambda(commanded, content, calibratedFor), unlike: null },
					{
						id: "injectors",
						of: (content) => injectorDemand(content) / injectorDemand(calibratedFor) - 1,
						unlike: null,
					},
					{ id: "pump", of: (content) => pumpDemand(content) / pumpDemand(calibratedFor) - 1, unlike: null },
					{ id: "trim", of: (content) => trimNeeded(content, calibratedFor), unlike: null },
				];
	return [
		{
			id: "fuelling",
			properties: [
				{ id: "airFuelRatio", of: (content) => propertiesOf(content).stoichiometricRatio, unlike: null },
				...ofCalibration,
			],
		},
		{
			id: "heat",
			properties: [
				{ id: "heat", of: (content, base) => propertiesOf(content, base).lowerHeatingValueMJPerL, unlike: byDensity },
				{
					id: "cooling",
					of: (content, base) => propertiesOf(content, base).heatOfVaporisationKJPerKgOfMixture,
					unlike: byHeatOfVaporisation,
				},
			],
		},
		{
			id: "knock",
			properties: [
				{ id: "ron", of: (content, base) => propertiesOf(content, base).ron, unlike: byInteraction },
				{ id: "mon", of: (content, base) => propertiesOf(content, base).mon, unlike: byInteraction },
			],
		},
		{
			id: "liquid",
			properties: [
				{ id: "density", of: (content, base) => propertiesOf(content, base).densityKgPerL, unlike: byDensity },
				{
					id: "vapourPressure",
					of: (content, base) => propertiesOf(content, base).vapourPressureKPa,
					unlike: byVapourPressure,
				},
			],
		},
	];
}

const between = 50;

/** Least and most of a property from one content to another; it may have its peak in between. */
export function spanOf({ of }: BlendProperty, low: Fraction, high: Fraction): readonly [number, number] {
	const values = Array.from({ length: between + 1 }, (_, i) => of(fraction(low + ((high - low) * i) / between)));
	return [Math.min(...values), Math.max(...values)];
}
