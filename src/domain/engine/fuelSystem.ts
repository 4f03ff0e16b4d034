/** The fuel-system card of a car: what is known of its injectors, pump and calibration. Every field may be left out. */

/** Relative standard uncertainties. */
export interface Spreads {
	readonly injectorFlow: number;
	/** Of the pressure across the injectors. */
	readonly pressure: number;
	readonly pumpFlow: number;
	readonly power: number;
	readonly consumption: number;
	/** What sensors and ageing use up of the trim, or free. */
	readonly trim: number;
	/** Of the lambda that open-loop fuelling arrives at. */
	readonly lambda: number;
}

export interface FuelSystem {
	/** Static flow of one injector, cc/min, at `injectorRatedKPa`, or at full load where no pressures are known. */
	readonly injectorFlowCcPerMin?: number;
	/** Pressure across the injector at which its flow is stated, kPa. */
	readonly injectorRatedKPa?: number;
	/** Pressure across the injector at full load, kPa. */
	readonly injectorFullLoadKPa?: number;
	readonly injectorCount?: number;
	/** Largest share of the time that the injectors may be open. */
	readonly dutyLimit?: number;
	/** What the pump delivers at the pressure and the voltage of full load, L/h. */
	readonly pumpFlowLPerH?: number;
	/** Largest power at the crankshaft, kW. */
	readonly powerKW?: number;
	/** What the engine would burn of gasoline at that power, g/kWh. */
	readonly consumptionGPerKWh?: number;
	/** How far the long and the short trim can enrich together, fraction. */
	readonly trimAuthority?: number;
	/** What the calibration commands at full load, on the blend that it was made for. */
	readonly commandedLambda?: number;
	/** Leanest lambda at full load that the tuner accepts. */
	readonly leanestLambda?: number;
	readonly spreads?: Partial<Spreads>;
}

/** Where the card states none (common practice). */
export const usualSpreads: Spreads = {
	injectorFlow: 0.03,
	pressure: 0.03,
	pumpFlow: 0.05,
	power: 0.05,
	consumption: 0.05,
	trim: 0.03,
	lambda: 0.02,
};

/** Where the card states none (common practice: 80 to 85 %). */
export const usualDutyLimit = 0.8;

const numbers = [
	"injectorFlowCcPerMin",
	"injectorRatedKPa",
	"injectorFullLoadKPa",
	"injectorCount",
	"dutyLimit",
	"pumpFlowLPerH",
	"powerKW",
	"consumptionGPerKWh",
	"trimAuthority",
	"commandedLambda",
	"leanestLambda",
] as const satisfies readonly (keyof FuelSystem)[];

/**
 * Throws unless every number of the card that is known here is more than zero and finite, and the duty limit at most 1. A
 * newer version may have added fields of its own.
 */
export function checkedFuelSystem(system: FuelSystem): FuelSystem {
	const { spreads = {} } = system;
	const known = Object.keys(usualSpreads) as (keyof Spreads)[];
	const values = [
		...numbers.map((name) => [name, system[name]] as const),
		...known.map((name) => [name, spreads[name]] as const),
	];
	for (const [name, value] of values) {
		if (value !== undefined && !(value > 0 && value < Infinity))
			throw new RangeError(`${name} must be more than zero, got ${value}`);
	}
	if ((system.dutyLimit ?? 0) > 1) throw new RangeError(`dutyLimit must be at most 1, got ${system.dutyLimit}`);
	return system;
}
