import { strong } from "../../emphasis";

/** What the blend does to the engine. */
export const words = {
	reading: "Reading the log…",
	title: "What the blend does to the engine",
	tank: (content: string, range: string) => `The tank holds about ${content} ethanol, nine times in ten ${range}.`,
	tankUnknown: "Nothing is known of this tank yet.",
	madeFor: (calibration: string, content: string) => `“${calibration}” is made for ${content}.`,
	noCalibration: "No calibration is entered, so nothing can be held against one.",
	curves: (band: boolean) =>
		`Every curve runs from no ethanol to pure ethanol. ${band ? "The upright band is the tank’s range, nine times in ten. " : ""}Shaded along a curve: other gasolines than the usual one that the numbers are for.`,
	toFuelSystem: "To the fuel system and its limits",
	compare: (content: string) => `Compare with ${strong(content)} ethanol`,
	commands: (lambda: string) => `At full load it commands ${lambda}, the fuel-system card says.`,
	commandsOne: "Here for a calibration that commands 1; the fuel-system card takes what it commands at full load.",
	trimsReach: (authority: string) => `The fuel-system card gives them ${authority}.`,

	tankNow: "Tank now",
	valueMadeFor: (content: string) => `Made for ${content}`,
	valueAt: (content: string) => `At ${content}`,
	source: "Where it comes from",
	/** A range of numbers that have signs. */
	signedRange: (from: string, to: string) => `${from} to ${to}`,
	/** For whoever cannot see the curve. */
	curve: (name: string, none: string, pure: string) =>
		`${name} over the ethanol content, from ${none} without any to ${pure} of pure ethanol.`,
	band: (low: string, high: string) => `The tank’s range, ${low} to ${high}, is drawn as a band.`,

	groups: {
		fuelling: "Mixture and fuel flow",
		heat: "Heat and cooling",
		knock: "Resistance to knock",
		liquid: "The liquid itself",
	},
	properties: {
		airFuelRatio: {
			name: "Stoichiometric air–fuel ratio",
			unit: "kg of air per kg of fuel",
			means: "So much air a kilogram of the blend burns: ethanol brings its own oxygen.",
			source:
				"By mass from 14.6 for gasoline (Zope et al., ACC 2011) and 9.0 for ethanol (DOE AFDC fuel properties, which has 14.7 for gasoline).",
		},
		lambda: {
			name: "Lambda in open loop",
			unit: "",
			means: "What the flashed calibration arrives at where nothing corrects it, as at full load. Larger is leaner.",
			source:
				"The lambda commanded, times the fuel this blend needs for the same air over what the calibrated one needs. The injected volume is taken as the same.",
		},
		injectors: {
			name: "Injector time, against the calibrated blend",
			unit: "",
			means: "So much longer the injectors must stay open for the same air and lambda.",
			source:
				"Volume by the air it burns, and flow that falls with the root of the density (Bernoulli; Heywood, Internal Combustion Engine Fundamentals, ch. 7).",
		},
		pump: {
			name: "Fuel volume, against the calibrated blend",
			unit: "",
			means: "So much more fuel the pump must deliver for the same air and lambda.",
			source: "Volume by the air it burns. Scaled by heat instead, it would be up to 0.7\u00a0% less.",
		},
		trim: {
			name: "Fuel trim used up",
			unit: "",
			means:
				"So much the engine adds by itself in closed loop, as long as its trims reach. Little may be left for leaks.",
			source:
				"The fuel volume above. Many engines do not carry what they learned into full load (13 of 25 cars screened, CRC E-87-1).",
		},
		heat: {
			name: "Heating value",
			unit: "MJ/L",
			means: "Heat in a litre: with less of it the car goes less far on a tank.",
			source:
				"Lower heating values by mass, 43.44 and 26.95\u00a0MJ/kg (DOE AFDC fuel properties), times the density. Shaded: gasolines of 0.720 to 0.775\u00a0kg/L (EN 228, from memory).",
		},
		cooling: {
			name: "Heat of vaporisation",
			unit: "kJ per kg of stoichiometric mixture",
			means:
				"Heat that the fuel takes from the charge as it evaporates: more cools the charge, and makes a cold start harder.",
			source:
				"By mass from 350\u00a0kJ/kg for gasoline and 921 for ethanol (DOE AFDC fuel properties), over the mixture’s mass. Shaded: gasolines of 325 to 375\u00a0kJ/kg, as NREL measured (OSTI 1242469).",
		},
		ron: {
			name: "Octane, RON",
			unit: "",
			means: "Resistance to knock in the milder test. Most of the gain comes with the first 40\u00a0% of ethanol.",
			source:
				"Molar-linear rule (Anderson et al., Energy & Fuels 24, 2010, 6576) for a gasoline of RON 95, the least of EN 228, and 109 for ethanol. Shaded: up to what two research gasolines of RON 94 and 96 had beyond it (doi 10.1021/acs.energyfuels.8b00556). Paraffinic gasolines gain more.",
		},
		mon: {
			name: "Octane, MON",
			unit: "",
			means: "Resistance to knock in the harsher test, hotter and faster. Ethanol gains less there.",
			source:
				"Molar-linear rule (Anderson et al., Energy & Fuels 24, 2010, 6576) for a gasoline of MON 85, the least of EN 228, and 90 for ethanol. Shaded: up to what two research gasolines had beyond it (doi 10.1021/acs.energyfuels.8b00556).",
		},
		density: {
			name: "Density",
			unit: "kg/L",
			means: "What a litre weighs: a denser blend flows a little slower through the same injector.",
			source:
				"By volume from 0.745 for gasoline and 0.789 for ethanol at 20\u00a0°C. Shaded: gasolines of 0.720 to 0.775\u00a0kg/L (EN 228, from memory).",
		},
		vapourPressure: {
			name: "Vapour pressure at 37.8\u00a0°C",
			unit: "kPa",
			means:
				"How easily it evaporates: a little ethanol raises it, much of it lowers it, and a cold engine starts worse.",
			source:
				"Wilson’s equation for gasoline taken as one substance (Pumphrey et al., Fuel 79, 2000, 1405), fitted to Directive 98/70/EC, annex III, and EPA MOVES; for a summer gasoline of 60\u00a0kPa. Shaded: gasolines of 48 to 90\u00a0kPa, summer to winter.",
		},
	},
};

export type Words = typeof words;
