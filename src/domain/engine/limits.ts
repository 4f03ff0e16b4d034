/** Upper limits that a car's fuel system sets to the ethanol content, each with its doubt, and the one that binds. */
import { log, normalChance, normalDensity } from "../elementary";
import { type Fraction, fraction } from "../quantity";
import { type Capability, capabilitiesOf, type LimitKind, together } from "./capability";
import { checkedFuelSystem, type FuelSystem, type Spreads } from "./fuelSystem";

/** 0: not even gasoline is met. 1: no limit below pure ethanol. */
export interface Limit {
	readonly median: Fraction;
	/** Ends of the central 90 % interval. */
	readonly low: Fraction;
	readonly high: Fraction;
}

/** What has to be said with the limits; that the tuner decides always has. */
export type Caution =
	| "tunerDecides"
	/** At least one spread is the usual one, not this car's. */
	| "usualSpreads"
	/** Nothing is known of injectors and pump. */
	| "flowUnknown"
	/** The lambda of full load is not known, where 13 of 25 cars carry no learned trim (CRC E-87-1). */
	| "fullLoadUnknown";

/** Proposed as the lean edge of the window. */
export interface LeanEdge {
	/** With a chance of `risk` the real limit is lower. */
	readonly content: Fraction;
	readonly risk: number;
	/** The limit that speaks first, which is the reason. */
	readonly binding: LimitKind;
	/** The system falls short of the very blend that the calibration was made for. */
	readonly belowCalibration: boolean;
}

export interface FuelSystemLimits {
	readonly limits: Readonly<Record<LimitKind, Limit | null>>;
	/** Null where nothing is known, or where nothing binds below pure ethanol. */
	readonly leanEdge: LeanEdge | null;
	readonly cautions: readonly Caution[];
}

const kinds: readonly LimitKind[] = ["injectors", "pump", "trim", "lambda"];

/**
 * `calibratedFor` is null without a calibration; trim and lambda then set no limit. `risk`: accepted chance that the real
 * limit lies below the lean edge. Throws where the card has a number that is not more than zero.
 */
export function limitsOf(system: FuelSystem, calibratedFor: Fraction | null, risk = 0.05): FuelSystemLimits {
	const capabilities = capabilitiesOf(checkedFuelSystem(system), calibratedFor);
	const limits = {
		injectors: limitOf(capabilities.injectors),
		pump: limitOf(capabilities.pump),
		trim: limitOf(capabilities.trim),
		lambda: limitOf(capabilities.lambda),
	};
	const known = kinds.flatMap((kind) => capabilities[kind] ?? []);
	const content = contentMetWith(1 - risk, known);
	const binding = firstOf(limits);
	const leanEdge =
		binding === null || content === 1
			? null
			: { content, risk, binding, belowCalibration: calibratedFor !== null && content < calibratedFor };
	return { limits, leanEdge, cautions: cautionsOf(limits, system.spreads ?? {}) };
}

function limitOf(capability: Capability | null): Limit | null {
	if (!capability) return null;
	const [low, median, high] = [0.95, 0.5, 0.05].map((chance) => contentMetWith(chance, [capability]));
	return { low, median, high };
}

/** The limit that is lowest at its cautious end, and by the median where those ends meet at 0 or 1. */
function firstOf(limits: FuelSystemLimits["limits"]): LimitKind | null {
	let first: { readonly kind: LimitKind; readonly limit: Limit } | null = null;
	for (const kind of kinds) {
		const limit = limits[kind];
		if (!limit) continue;
		const before = first?.limit;
		const sooner = !before || limit.low < before.low || (limit.low === before.low && limit.median < before.median);
		if (sooner) first = { kind, limit };
	}
	return first?.kind ?? null;
}

const steps = 30;
const stepsPerSd = 5;

/**
 * Chance that all parts meet the demand of a content. What they share is integrated by the trapezoid rule, six sd to either
 * side, which is as good as exact for bells; given that, they are independent. One part alone needs no integral.
 */
function chanceMet(content: Fraction, parts: readonly Capability[]): number {
	const spare = parts.map(({ most, demand }) => log(most / demand(content)));
	if (parts.length === 1) return normalChance(spare[0] / together(parts[0].sharedSd, parts[0].ownSd));
	let chance = 0;
	let weight = 0;
	for (let i = -steps; i <= steps; i++) {
		const z = i / stepsPerSd;
		let all = normalDensity(z);
		weight += all;
		parts.forEach(({ sharedSd, ownSd }, part) => {
			all *= normalChance((spare[part] - sharedSd * z) / ownSd);
		});
		chance += all;
	}
	return chance / weight;
}

/** The largest content that is met with a chance; 0 where none is. Demand rises with the content, so halving finds it. */
function contentMetWith(chance: number, parts: readonly Capability[]): Fraction {
	const met = (content: number) => chanceMet(fraction(content), parts) >= chance;
	if (met(1)) return fraction(1);
	if (!met(0)) return fraction(0);
	let [low, high] = [0, 1];
	while (high - low > 1e-7) {
		const middle = (low + high) / 2;
		if (met(middle)) low = middle;
		else high = middle;
	}
	return fraction(low);
}

/** Which spreads each limit rests on. */
const restsOn: Readonly<Record<LimitKind, readonly (keyof Spreads)[]>> = {
	injectors: ["injectorFlow", "pressure", "power", "consumption"],
	pump: ["pumpFlow", "power", "consumption"],
	trim: ["trim"],
	lambda: ["lambda"],
};

function cautionsOf(limits: FuelSystemLimits["limits"], stated: Partial<Spreads>): Caution[] {
	const cautions: Caution[] = ["tunerDecides"];
	const used = kinds.filter((kind) => limits[kind]).flatMap((kind) => restsOn[kind]);
	if (used.some((name) => stated[name] === undefined)) cautions.push("usualSpreads");
	if (!limits.injectors && !limits.pump) cautions.push("flowUnknown");
	if (!limits.lambda) cautions.push("fullLoadUnknown");
	return cautions;
}
