/** Units of the trade for what a fuel-system card holds, and those a person chose. The card keeps those of the core. */

/** Under this those that a person chose are in the store. */
export const unitsKey = "fuel system units";

/** In one of these, how many of the core's unit; the first of each is the core's own. */
export const unitSizes = {
	/** The trade takes 1 lb/h for 10.5 cc/min, which is a density of 0.72 kg/L (common practice). */
	injectorFlow: { "cc/min": 1, "lb/h": 10.5 },
	/** NIST SP 811, appendix B. */
	pressure: { kPa: 1, bar: 100, psi: 6.894757 },
	/** US gallons, exact. */
	pumpFlow: { "L/h": 1, "gal/h": 3.785411784 },
	/** hp of 550 ft·lbf/s, PS of 75 kgf·m/s; both exact in the digits given. */
	power: { kW: 1, hp: 0.7456998716, PS: 0.73549875 },
	/** 453.59237 g in a pound, and the hp above. */
	consumption: { "g/kWh": 1, "lb/hp·h": 608.277388 },
} as const;

export type UnitKind = keyof typeof unitSizes;

/** A unit's name for each kind. */
export type ChosenUnits = Readonly<Record<UnitKind, string>>;

export const unitKinds = Object.keys(unitSizes) as readonly UnitKind[];

/** Names of the units of a kind. */
export function unitsOfKind(kind: UnitKind): readonly string[] {
	return Object.keys(unitSizes[kind]);
}

/** The size of a unit in the core's; 1 for a name that is unknown. */
export function unitSize(kind: UnitKind, unit: string): number {
	const sizes: Readonly<Record<string, number>> = unitSizes[kind];
	return Object.hasOwn(sizes, unit) ? sizes[unit] : 1;
}

const metric: ChosenUnits = {
	injectorFlow: "cc/min",
	pressure: "kPa",
	pumpFlow: "L/h",
	power: "kW",
	consumption: "g/kWh",
};

const american: ChosenUnits = { ...metric, injectorFlow: "lb/h", pressure: "psi", power: "hp", consumption: "lb/hp·h" };

/** The units as remembered, and where nothing is, those of the language. */
export function readUnits(raw: unknown, language: string | undefined): ChosenUnits {
	const usual = language === "en-US" ? american : metric;
	const stored = (typeof raw === "object" && raw !== null ? raw : {}) as Readonly<Record<string, unknown>>;
	const named = (kind: UnitKind) => unitsOfKind(kind).find((unit) => unit === stored[kind]) ?? usual[kind];
	return {
		injectorFlow: named("injectorFlow"),
		pressure: named("pressure"),
		pumpFlow: named("pumpFlow"),
		power: named("power"),
		consumption: named("consumption"),
	};
}
