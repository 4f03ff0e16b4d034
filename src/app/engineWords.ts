/** The words of the screen about the engine: what the blend does to it. Those of the fuel system are in fuelSystemWords. */
import type { PropertyId } from "./screens/engine/blendProperty";
import { engineWords } from "./words/engine";
import { locale } from "./words/language";

/** How a property's number is told. */
interface Notation {
	/** Behind every number; null: the unit is in the name alone. */
	readonly sign: "%" | null;
	readonly digits: 0 | 1 | 2 | 3;
}

const change: Notation = { sign: "%", digits: 1 };
const tenths: Notation = { sign: null, digits: 1 };
const thousandths: Notation = { sign: null, digits: 3 };

const notations: Readonly<Record<PropertyId, Notation>> = {
	airFuelRatio: tenths,
	lambda: thousandths,
	injectors: change,
	pump: change,
	trim: change,
	heat: tenths,
	cooling: tenths,
	ron: tenths,
	mon: tenths,
	density: thousandths,
	vapourPressure: { sign: null, digits: 0 },
};

/** Whether a range of it is told in words, and may break. */
export function hasSign(id: PropertyId): boolean {
	return notations[id].sign !== null;
}

const formats = [false, true].map((signed) =>
	[0, 1, 2, 3].map(
		(digits) =>
			new Intl.NumberFormat(locale, {
				minimumFractionDigits: digits,
				maximumFractionDigits: digits,
				signDisplay: signed ? "exceptZero" : "auto",
			}),
	),
);

function bare(id: PropertyId, value: number): string {
	const { sign, digits } = notations[id];
	const text = sign === "%" ? formats[1][digits].format(value * 100) : formats[0][digits].format(value);
	return text.replace("-", "−");
}

const suffix = (id: PropertyId) => (notations[id].sign === "%" ? "\u00a0%" : "");

/** A value of a property, with its sign behind it where that is a percent sign. */
export function propertyValue(id: PropertyId, value: number): string {
	return `${bare(id, value)}${suffix(id)}`;
}

/** Its range; null where both ends print alike. */
export function propertyRange(id: PropertyId, low: number, high: number): string | null {
	const [from, to] = [bare(id, low), bare(id, high)];
	if (from === to) return null;
	return hasSign(id) ? `${engineWords().signedRange(from, to)}${suffix(id)}` : `${from}–${to}`;
}

/** Name and unit. */
export function propertyTitle(id: PropertyId): string {
	const { name, unit } = engineWords().properties[id];
	return unit === "" ? name : `${name}, ${unit}`;
}

/** For whoever cannot see the curve. */
export function curveWords(
	id: PropertyId,
	ends: readonly [none: number, pure: number],
	tank: { readonly low: string; readonly high: string } | null,
): string {
	const { properties, curve, band } = engineWords();
	const [none, pure] = ends.map((value) => propertyValue(id, value));
	const told = curve(properties[id].name, none, pure);
	return tank ? `${told} ${band(tank.low, tank.high)}` : told;
}
