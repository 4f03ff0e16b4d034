/**
 * Format version 1 of the log, as design/log-format has it: frozen once released. The sentences are what a person reads
 * after the place, so each says what the field must be. Fields we don't know are kept and mean nothing.
 */
import * as z from "zod/mini";
import type { LogEvent } from "../domain/event";
import type { Fraction, Litres } from "../domain/quantity";
import type { Car } from "../domain/vehicle";
import { longestName, mostCalibrations, mostEvents } from "./limits";

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

const text = z
	.string(`must be text of 1 to ${longestName} characters`)
	.check(
		z.minLength(1),
		z.maxLength(longestName),
		z.refine(isWellFormed, "must not hold half a character (a lone surrogate)"),
	);

/** What screens show. */
const label = text.check(
	z.refine(isTame, "must not hold line breaks, controls, turns of direction, or more than 30 marks on one letter"),
);

const aFraction = quantity<Fraction>(z.number("must be a number from 0 to 1").check(z.gte(0), z.lte(1)));
const aBudget = quantity<Fraction>(z.number("must be a chance between 0 and 1").check(z.gt(0), z.lt(1)));
// No instrument is finer than a millionth, and nothing is known where the spread exceeds the whole scale.
const finest = 1e-6;
const aLevelSd = z.number("must be from 0.000001 to 0.5 of the tank").check(z.gte(finest), z.lte(0.5));
const anSd = z.number("must be from 0.000001 to 1").check(z.gte(finest), z.lte(1));
const aVolume = quantity<Litres>(z.number("must be more than 0 L and at most 2000 L").check(z.gt(0), z.lte(2000)));
const anOdometer = z.number("must be from 0 to 5000000 km").check(z.gte(0), z.lte(5e6));
// Some currencies count in thousands for a litre.
const aPrice = z.number("must be a price per litre, more than 0 and at most 1000000").check(z.gt(0), z.lte(1e6));

const twoContents = "must be two contents, [low, high], each from 0 to 1";
const aRange = z
	.tuple([aFraction, aFraction], twoContents)
	.check(z.refine(([low, high]) => low <= high, "must run from the lower content to the higher"));
const aWindow = z
	.tuple([aFraction, aFraction], twoContents)
	.check(z.refine(([low, high]) => low < high, "must have a lower end below its higher end"));

const time = "must be a time with its offset, such as 2026-06-01T17:30:00+02:00";
const timePattern = /^\d{4}-\d\d-\d\dT([01]\d|2[0-3]):[0-5]\d(:[0-5]\d(\.\d{1,9})?)?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/;
const aTime = z
	.string(time)
	.check(z.regex(timePattern), z.refine(isRealDay, "must be on a day that exists, from 1970 to 2200"));

const aProduct = z.looseObject({ id: label, range: aRange }, "must be a product: its id and range");

const calibrationSchema = z.looseObject(
	{
		id: text,
		name: label,
		calibratedFor: aFraction,
		window: aWindow,
		leanBudget: z.exactOptional(aBudget),
		knockBudget: z.exactOptional(aBudget),
	},
	"must be a calibration in braces",
);

/** A number of the fuel-system card, within limits that no car comes near. */
function aSize(what: string, most: number, unit = "") {
	return z.exactOptional(z.number(`must be ${what} from 0.000001 to ${most}${unit}`).check(z.gte(finest), z.lte(most)));
}

const aCount = z
	.number("must be a whole number of injectors from 1 to 100")
	.check(z.gte(1), z.lte(100), z.multipleOf(1));
const aSpread = aSize("a relative standard uncertainty", 1);

const fuelSystemSchema = z.looseObject(
	{
		injectorFlowCcPerMin: aSize("the flow of one injector", 100_000, " cc/min"),
		injectorRatedKPa: aSize("a pressure", 1_000_000, " kPa"),
		injectorFullLoadKPa: aSize("a pressure", 1_000_000, " kPa"),
		injectorCount: z.exactOptional(aCount),
		dutyLimit: aSize("a share of the time", 1),
		pumpFlowLPerH: aSize("the flow of the pump", 100_000, " L/h"),
		powerKW: aSize("a power", 100_000, " kW"),
		consumptionGPerKWh: aSize("a consumption of gasoline", 10_000, " g/kWh"),
		trimAuthority: aSize("a fraction", 1),
		commandedLambda: aSize("a lambda", 10),
		leanestLambda: aSize("a lambda", 10),
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
				"must be the relative standard uncertainties in braces",
			),
		),
	},
	"must be the fuel-system card in braces",
);

const aCurrency = "must be the three letters of a currency, such as EUR (ISO 4217)";

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
			"must be the tank in braces",
		),
		calibrations: z
			.array(calibrationSchema, "must be a list of calibrations, perhaps empty: []")
			.check(z.maxLength(mostCalibrations, `must be at most ${mostCalibrations} calibrations`)),
		currency: z.exactOptional(z.string(aCurrency).check(z.regex(/^[A-Z]{3}$/, aCurrency))),
		fuelSystem: z.exactOptional(fuelSystemSchema),
	},
	"must be a car in braces",
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
		"must hold either range, or value and sd",
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
	toClick: z.exactOptional(z.boolean("must be true or false")),
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
				value: z.number("must be a trim from -0.9 to 9").check(z.gte(-0.9), z.lte(9)),
				calibratedFor: aFraction,
				baselineSd: z.exactOptional(anSd),
			})
			.check(
				z.refine(({ sd, baselineSd = 0 }) => baselineSd < sd, {
					path: ["baselineSd"],
					error: "must be less than sd, of which it is a part",
				}),
			),
	],
	"must be tank, pump or trim",
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
		error: ({ code }) =>
			code === "invalid_union"
				? "must be start, fill, reading, level, calibration or void"
				: "must be an event in braces",
	},
);

function nothing() {
	return z.exactOptional(z.never("must be left out beside the other way to give the contents"));
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
