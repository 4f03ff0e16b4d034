/** Settings that two phones have otherwise, in words: of a tank or a fuel system only what differs. */
import type { VolumeUnit } from "../domain/units";
import { capitalized } from "./capitalized";
import { exactPercent, exactVolume } from "./format";
import { fieldNames, typedField, unitOfField } from "./fuelSystemForm";
import type { ChosenUnits } from "./fuelSystemUnits";
import { settingName } from "./settingName";
import { typedNumber } from "./typedNumber";
import { fuelSystemWords } from "./words/fuelSystem";
import { handWords } from "./words/hand";

export interface Differing {
	readonly name: string;
	readonly own: string;
	readonly other: string;
}

interface Units {
	readonly volume: VolumeUnit;
	readonly fuelSystem: ChosenUnits;
}

type Fields = Readonly<Record<string, unknown>>;

/** One each for what differs in it; for a setting that is a plain value, one. */
export function differingIn(field: string, own: unknown, other: unknown, units: Units): Differing[] {
	const whole = { name: capitalized(settingName(field)), path: [field], own, other };
	return partsOf(whole).map(({ name, path, own, other }) => ({
		name,
		own: valueWords(path, own, units),
		other: valueWords(path, other, units),
	}));
}

interface Part {
	readonly name: string;
	readonly path: readonly string[];
	readonly own: unknown;
	readonly other: unknown;
}

function partsOf(part: Part): Part[] {
	const { path, own, other } = part;
	const [a, b] = [fieldsOf(own), fieldsOf(other)];
	if (!a || !b) return [part];
	const names = [...new Set([...Object.keys(a), ...Object.keys(b)])];
	return names
		.filter((name) => JSON.stringify(a[name]) !== JSON.stringify(b[name]))
		.flatMap((name) => {
			const inner = [...path, name];
			return partsOf({ name: partName(inner), path: inner, own: a[name], other: b[name] });
		});
}

/** A thing that is not there is one with nothing in it, beside one that is. */
function fieldsOf(value: unknown): Fields | null {
	if (value === undefined) return {};
	return typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Fields) : null;
}

function partName(path: readonly string[]): string {
	const { tankParts } = handWords();
	const last = path[path.length - 1];
	// Of a tank the capacity is what everybody calls its size.
	if (path[0] === "tank" && last === "capacityL") return capitalized(settingName("tank"));
	if (path[0] === "tank" && Object.hasOwn(tankParts, last)) return tankParts[last as keyof typeof tankParts];
	const known = fuelSystemField(path);
	return known === null ? capitalized(settingName(last)) : fuelSystemWords().fields[known];
}

/** Which field of the card it is; the doubts have names of their own there. */
function fuelSystemField([setting, first, second]: readonly string[]) {
	if (setting !== "fuelSystem") return null;
	return fieldNames.find((name) => name === (first === "spreads" ? `${second}Sd` : first)) ?? null;
}

function valueWords(path: readonly string[], value: unknown, { volume, fuelSystem }: Units): string {
	if (value === undefined) return handWords().noValue;
	if (typeof value === "number") {
		if (path[0] === "tank") return path[1] === "capacityL" ? exactVolume(value, volume) : exactPercent(value);
		const field = fuelSystemField(path);
		const unit = field && unitOfField(field, fuelSystem);
		return field ? `${typedField(field, value, fuelSystem)}${unit ? `\u00a0${unit}` : ""}` : typedNumber(value);
	}
	const text = typeof value === "string" ? value : JSON.stringify(value);
	return text.length > 80 ? `${[...text].slice(0, 79).join("")}…` : text;
}
