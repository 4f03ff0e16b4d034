/** The fuel-system card as a person types it: every field may stay empty. */
import type { FuelSystem, Spreads } from "../domain/engine/fuelSystem";
import { err, ok, type Result } from "../domain/result";
import { type ChosenUnits, type UnitKind, unitSize } from "./fuelSystemUnits";
import { readNumber } from "./numberWords";
import { parseNumber } from "./parseNumber";
import { typedNumber } from "./typedNumber";
import { fuelSystemWords } from "./words/fuelSystem";
import { numbersWords } from "./words/numbers";

export type NumberName = Exclude<keyof FuelSystem, "spreads">;
export type SpreadName = keyof Spreads;
/** A field of the form; the doubts have names of their own. */
export type FieldName = NumberName | `${SpreadName}Sd`;

export interface FuelSystemForm {
	readonly values: Readonly<Partial<Record<FieldName, string>>>;
	readonly units: ChosenUnits;
}

export type FuelSystemFaults = Partial<Record<FieldName, string>>;

/** Limits, and an example, in the core's units. */
interface Field {
	/** What it is measured in; null: in nothing. */
	readonly unit: UnitKind | "%" | null;
	readonly least: number;
	readonly most: number;
	readonly example: number;
}

const share: Omit<Field, "example"> = { unit: "%", least: 0.01, most: 1 };
const lambda: Omit<Field, "example"> = { unit: null, least: 0.5, most: 1.5 };
const doubt: Field = { unit: "%", least: 0.001, most: 0.5, example: 0.05 };

/** From small engines to large ones; a number in the wrong unit mostly lies outside. */
export const fields: Readonly<Record<FieldName, Field>> = {
	injectorFlowCcPerMin: { unit: "injectorFlow", least: 50, most: 5000, example: 550 },
	injectorRatedKPa: { unit: "pressure", least: 100, most: 50_000, example: 300 },
	injectorFullLoadKPa: { unit: "pressure", least: 100, most: 50_000, example: 300 },
	injectorCount: { unit: null, least: 1, most: 24, example: 4 },
	dutyLimit: { ...share, least: 0.1, example: 0.8 },
	pumpFlowLPerH: { unit: "pumpFlow", least: 20, most: 2000, example: 190 },
	powerKW: { unit: "power", least: 5, most: 2000, example: 250 },
	consumptionGPerKWh: { unit: "consumption", least: 150, most: 800, example: 340 },
	trimAuthority: { ...share, example: 0.25 },
	commandedLambda: { ...lambda, example: 0.8 },
	leanestLambda: { ...lambda, example: 0.86 },
	injectorFlowSd: doubt,
	pressureSd: doubt,
	pumpFlowSd: doubt,
	powerSd: doubt,
	consumptionSd: doubt,
	trimSd: doubt,
	lambdaSd: doubt,
};

export const fieldNames = Object.keys(fields) as readonly FieldName[];

export function isSpread(name: FieldName): name is `${SpreadName}Sd` {
	return name.endsWith("Sd");
}

function spreadOf(name: `${SpreadName}Sd`): SpreadName {
	return name.slice(0, -2) as SpreadName;
}

function storedValue(name: FieldName, system: FuelSystem): number | undefined {
	return isSpread(name) ? system.spreads?.[spreadOf(name)] : system[name];
}

/** The unit's name of a field; null where it has none. */
export function unitOfField(name: FieldName, units: ChosenUnits): string | null {
	const { unit } = fields[name];
	return unit === null || unit === "%" ? unit : units[unit];
}

function sizeOf(name: FieldName, units: ChosenUnits): number {
	const { unit } = fields[name];
	return unit === null ? 1 : unit === "%" ? 0.01 : unitSize(unit, units[unit]);
}

/** A number of the core as one would type it, to five digits. */
export function typedField(name: FieldName, value: number, units: ChosenUnits): string {
	return typedNumber(inFieldUnit(name, value, units));
}

/** A number of the core in the unit that its field is shown in, to five digits. */
export function inFieldUnit(name: FieldName, value: number, units: ChosenUnits): number {
	return Number((value / sizeOf(name, units)).toPrecision(5));
}

export function fuelSystemFormOf(system: FuelSystem, units: ChosenUnits): FuelSystemForm {
	const values = fieldNames.flatMap((name) => {
		const value = storedValue(name, system);
		return value === undefined ? [] : [[name, typedField(name, value, units)] as const];
	});
	return { values: Object.fromEntries(values), units };
}

/**
 * Another unit, chosen beside one field. Numbers that stand as stored are shown in it. One typed beside the chooser stays
 * as typed: it was meant so. Those of other fields that share the unit are converted, as far as they can be read.
 */
export function withFieldUnit(
	form: FuelSystemForm,
	chosenAt: FieldName,
	kind: UnitKind,
	unit: string,
	stored: FuelSystem,
): FuelSystemForm {
	const units = { ...form.units, [kind]: unit };
	const [before, after] = [fuelSystemFormOf(stored, form.units).values, fuelSystemFormOf(stored, units).values];
	const values = { ...form.values };
	for (const name of fieldNames) {
		const typed = values[name];
		if (fields[name].unit !== kind || typed === undefined) continue;
		if (typed === before[name]) values[name] = after[name] ?? "";
		else if (name !== chosenAt) values[name] = inUnits(typed, name, form.units, units);
	}
	return { values, units };
}

function inUnits(typed: string, name: FieldName, from: ChosenUnits, to: ChosenUnits): string {
	const read = parseNumber(typed, 0, Number.MAX_VALUE);
	return read.ok ? typedField(name, read.value * sizeOf(name, from), to) : typed;
}

/** How many of the fields hold something. */
export function countEntered({ values }: FuelSystemForm): number {
	return fieldNames.filter((name) => (values[name] ?? "").trim() !== "").length;
}

/** Whether it says what is stored, no more and no less. */
export function isAsStored(form: FuelSystemForm, stored: FuelSystem): boolean {
	const { values } = fuelSystemFormOf(stored, form.units);
	return fieldNames.every((name) => (form.values[name] ?? "") === (values[name] ?? ""));
}

/** The card, with nothing in it that is unknown to the core, or what is wrong beside which field. */
export function readFuelSystem(form: FuelSystemForm, stored: FuelSystem): Result<FuelSystem, FuelSystemFaults> {
	const faults: FuelSystemFaults = {};
	const numbers: Partial<Record<NumberName, number>> = {};
	const spreads: Partial<Record<SpreadName, number>> = {};
	for (const name of fieldNames) {
		const read = readField(name, form, storedValue(name, stored));
		if (!read.ok) faults[name] = read.error;
		else if (read.value === null) continue;
		else if (isSpread(name)) spreads[spreadOf(name)] = read.value;
		else numbers[name] = read.value;
	}
	const { commandedLambda: commanded, leanestLambda: leanest, injectorCount: count } = numbers;
	if (count !== undefined && !Number.isInteger(count)) faults.injectorCount = fuelSystemWords().notWhole;
	if (commanded !== undefined && leanest !== undefined && leanest < commanded) {
		faults.leanestLambda = fuelSystemWords().leanerThanLeanest(typedNumber(commanded));
	}
	if (Object.keys(faults).length > 0) return err(faults);
	return ok(Object.keys(spreads).length > 0 ? { ...numbers, spreads } : numbers);
}

/** Null where it is empty. */
function readField(
	name: FieldName,
	{ values, units }: FuelSystemForm,
	stored: number | undefined,
): Result<number | null, string> {
	const typed = (values[name] ?? "").trim();
	if (typed === "") return ok(null);
	// Shown rounded; what was not touched stays exact.
	if (stored !== undefined && typed === typedField(name, stored, units)) return ok(stored);
	const { least, most, example, unit } = fields[name];
	const size = sizeOf(name, units);
	const limits = numbersWords().limits(typedField(name, least, units), typedField(name, most, units));
	const suffix = unitOfField(name, units);
	const read = readNumber(typed, least / size, most / size, {
		example: String(inFieldUnit(name, example, units)),
		limits: suffix === null ? limits : `${limits}\u00a0${suffix}`,
		inUnit: unit !== null && unit !== "%",
	});
	return read.ok ? ok(read.value * size) : read;
}

/** What to store: the card as read, with whatever a newer version of the app has put into the old one; null: nothing. */
export function storedFuelSystem(system: FuelSystem, stored: FuelSystem): FuelSystem | null {
	const spreads = { ...unknownIn(stored.spreads ?? {}, knownSpreads), ...system.spreads };
	const card = {
		...unknownIn(stored, fieldNames.concat("spreads" as FieldName)),
		...system,
		...(Object.keys(spreads).length > 0 ? { spreads } : {}),
	};
	return Object.keys(card).length > 0 ? card : null;
}

const knownSpreads = fieldNames.filter(isSpread).map(spreadOf);

function unknownIn(object: object, known: readonly string[]): object {
	return Object.fromEntries(Object.entries(object).filter(([name]) => !known.includes(name)));
}

/** A stored draft, if that is what it is. */
export function readFuelSystemDraft(raw: unknown, units: ChosenUnits): FuelSystemForm | null {
	const draft = raw as Partial<FuelSystemForm> | null | undefined;
	return draft?.values && draft.units ? { values: draft.values, units: { ...units, ...draft.units } } : null;
}
