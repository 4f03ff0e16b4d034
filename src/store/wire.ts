/**
 * Format version 1 of the log, as design/log-format has it: frozen once released. Each field names what it must be (see
 * `must.ts`). Fields we don't know are kept and mean nothing.
 */
import * as z from "zod/mini";
import type { LogEvent } from "../domain/event";
import type { Fraction, Litres } from "../domain/quantity";
import type { Calibration, Car } from "../domain/vehicle";
import { longestName, mostCalibrations, mostEvents } from "./limits";
import { finest, type Must, mostOf } from "./must";

export const format = "heeltap-log";
export const version = 1;

/** One car and its events, in any order. */
export interface Log {
	readonly car: Car;
	readonly events: readonly LogEvent[];
}

type Shape<T> = z.ZodMiniType<T, unknown>;

/** The one place where checked numbers get the brands of the domain. */
function quantity<Q extends number>(checked: z.ZodMiniNumber): z.ZodMiniType<Q, number> {
	return checked as unknown as z.ZodMiniType<Q, number>;
}

/** The message of a fault. */
function must(be: Must): Must {
	return be;
}

const text = z
	.string(must("text"))
	.check(z.minLength(1), z.maxLength(longestName), z.refine(isWellFormed, must("wellFormed")));

/** What screens show. */
export const label = text.check(z.refine(isTame, must("tame")));

export const aFraction = quantity<Fraction>(z.number(must("fraction")).check(z.gte(0), z.lte(1)));
const aBudget = quantity<Fraction>(z.number(must("budget")).check(z.gt(0), z.lt(1)));
// Nothing is known where the spread exceeds the whole scale.
const aLevelSd = z.number(must("levelSd")).check(z.gte(finest), z.lte(0.5));
const anSd = z.number(must("sd")).check(z.gte(finest), z.lte(1));
const aVolume = quantity<Litres>(z.number(must("volume")).check(z.gt(0), z.lte(2000)));
const anOdometer = z.number(must("odometer")).check(z.gte(0), z.lte(5e6));
// Some currencies count in thousands for a litre.
const aPrice = z.number(must("price")).check(z.gt(0), z.lte(1e6));

const aRange = z
	.tuple([aFraction, aFraction], must("contents"))
	.check(z.refine(([low, high]) => low <= high, must("contentsInOrder")));
const aWindow = z
	.tuple([aFraction, aFraction], must("contents"))
	.check(z.refine(([low, high]) => low < high, must("windowInOrder")));

const timePattern = /^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d{1,9})?)?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/;
export const aTime = z.string(must("time")).check(z.regex(timePattern), z.refine(isRealDay, must("realDay")));

const aProduct = z.looseObject({ id: label, range: aRange }, must("product"));

/** A number of the fuel-system card, within limits that no car comes near. */
function aSize(what: keyof typeof mostOf) {
	return z.exactOptional(z.number(must(what)).check(z.gte(finest), z.lte(mostOf[what])));
}

/** What a tuner says of a calibration, in a log and on a card. */
export const calibrationFields = {
	name: label,
	calibratedFor: aFraction,
	window: aWindow,
	leanBudget: z.exactOptional(aBudget),
	knockBudget: z.exactOptional(aBudget),
	leanestLambda: aSize("lambda"),
	notes: z.exactOptional(label),
	wayBack: z.exactOptional(label),
};

export const calibrationSchema: Shape<Calibration> = z.looseObject(
	{ id: text, ...calibrationFields },
	must("calibration"),
);

/** A day as `2026-06-01`. */
export const aDay = z.string(must("realDay")).check(z.regex(/^\d{4}-\d\d-\d\d$/), z.refine(isRealDay));

const aCount = z.number(must("injectorCount")).check(z.gte(1), z.lte(100), z.multipleOf(1));
const aSpread = aSize("spread");

const fuelSystemSchema = z.looseObject(
	{
		injectorFlowCcPerMin: aSize("injectorFlow"),
		injectorRatedKPa: aSize("pressure"),
		injectorFullLoadKPa: aSize("pressure"),
		injectorCount: z.exactOptional(aCount),
		dutyLimit: aSize("dutyLimit"),
		pumpFlowLPerH: aSize("pumpFlow"),
		powerKW: aSize("power"),
		consumptionGPerKWh: aSize("consumption"),
		trimAuthority: aSize("trimAuthority"),
		commandedLambda: aSize("lambda"),
		leanestLambda: aSize("lambda"),
		spreads: z.exactOptional(
			z.looseObject(
				{
					injectorFlow: aSpread,
					pressure: aSpread,
					pumpFlow: aSpread,
					power: aSpread,
					consumption: aSpread,
					trim: aSpread,
					lambda: aSpread,
				},
				must("spreads"),
			),
		),
	},
	must("fuelSystem"),
);

const aChange = z.exactOptional(aTime);

export const carSchema: Shape<Car> = z.looseObject(
	{
		id: text,
		name: label,
		tank: z.looseObject(
			{
				capacityL: aVolume,
				gaugeSd: z.exactOptional(aLevelSd),
				clickSd: z.exactOptional(aLevelSd),
			},
			must("tank"),
		),
		calibrations: z
			.array(calibrationSchema, must("calibrations"))
			.check(z.maxLength(mostCalibrations, must("fewCalibrations"))),
		currency: z.exactOptional(z.string(must("currency")).check(z.regex(/^[A-Z]{3}$/, must("currency")))),
		fuelSystem: z.exactOptional(fuelSystemSchema),
		changed: z.exactOptional(
			z.looseObject({ name: aChange, tank: aChange, currency: aChange, fuelSystem: aChange }, must("changed")),
		),
	},
	must("car"),
);

const recorded = { id: text, at: aTime, after: z.exactOptional(text) };
const measured = { ...recorded, kind: z.literal("reading"), sd: anSd, method: z.exactOptional(label) };

const startSchema = z.looseObject({
	...recorded,
	kind: z.literal("start"),
	contents: z.union(
		[
			z.looseObject({ range: aRange, value: nothing(), sd: nothing() }),
			z.looseObject({ value: aFraction, sd: anSd, range: nothing() }),
		],
		must("startContents"),
	),
	gauge: z.exactOptional(aFraction),
});

const fillSchema = z.looseObject({
	...recorded,
	kind: z.literal("fill"),
	stop: text,
	product: aProduct,
	litres: aVolume,
	place: z.exactOptional(label),
	gauge: z.exactOptional(aFraction),
	toClick: z.exactOptional(z.boolean(must("yesOrNo"))),
	odometerKm: z.exactOptional(anOdometer),
	pricePerLitre: z.exactOptional(aPrice),
});

const readingSchema = z.discriminatedUnion(
	"of",
	[
		z.looseObject({ ...measured, of: z.literal("tank"), value: aFraction }),
		z.looseObject({ ...measured, of: z.literal("pump"), value: aFraction, place: label, product: aProduct }),
		z
			.looseObject({
				...measured,
				of: z.literal("trim"),
				value: z.number(must("trim")).check(z.gte(-0.9), z.lte(9)),
				calibratedFor: aFraction,
				baselineSd: z.exactOptional(anSd),
			})
			.check(
				z.refine(({ sd, baselineSd = 0 }) => baselineSd < sd, {
					path: ["baselineSd"],
					error: must("baselineSd"),
				}),
			),
	],
	must("readingOf"),
);

export const eventSchema: Shape<LogEvent> = z.discriminatedUnion(
	"kind",
	[
		startSchema,
		fillSchema,
		readingSchema,
		z.looseObject({ ...recorded, kind: z.literal("level"), gauge: aFraction, odometerKm: z.exactOptional(anOdometer) }),
		z.looseObject({ ...recorded, kind: z.literal("calibration"), calibration: text }),
		z.looseObject({ ...recorded, kind: z.literal("void"), target: text }),
	],
	{
		error: ({ code }) => (code === "invalid_union" ? must("kind") : must("event")),
	},
);

function nothing() {
	return z.exactOptional(z.never(must("leftOut")));
}

function isWellFormed(value: string): boolean {
	return !/\p{Surrogate}/u.test(value);
}

/**
 * Such characters would reach out of their name into the words around it. Nobody types them; no language piles up more than
 * 30 marks (Stream-Safe Text Format, Unicode Standard Annex 15).
 */
function isTame(value: string): boolean {
	return !/[\p{Control}\u202a-\u202e\u2066-\u2069]|\p{Mark}{31}/u.test(value);
}

/** Date.parse differs between engines on the 30th of February, so the day is checked by a round trip. */
function isRealDay(value: string): boolean {
	const day = value.slice(0, 10);
	const midnight = new Date(`${day}T00:00:00Z`);
	return day >= "1970" && day < "2201" && midnight.getTime() >= 0 && midnight.toISOString().startsWith(day);
}

/** The whole file: what the published JSON Schema is made from. */
export const logSchema = z.looseObject({
	format: z.literal(format),
	version: z.literal(version),
	car: carSchema,
	events: z.array(eventSchema).check(z.maxLength(mostEvents)),
});
