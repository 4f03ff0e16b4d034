/** Builders of cars and events: a sound default, and what the test is about. */
import fc from "fast-check";
import type {
	CalibrationEvent,
	FillEvent,
	LevelEvent,
	PumpReading,
	StartEvent,
	TankReading,
	TrimReading,
	VoidEvent,
} from "../../src/domain/event";
import type { Calibration, Car } from "../../src/domain/vehicle";
import type { Log } from "../../src/store/wire";

/** Any fields, without the brands of the domain. */
type Fields = Record<string, unknown>;

export function aCalibration(fields: Fields = {}): Calibration {
	return { id: "e30", name: "Stage 2, E30", calibratedFor: 0.3, window: [0.26, 0.34], ...fields } as never;
}

export function aCar(fields: Fields = {}): Car {
	return {
		id: "car",
		name: "The grey one",
		tank: { capacityL: 58 },
		calibrations: [aCalibration()],
		...fields,
	} as never;
}

export function aStart(fields: Fields = {}): StartEvent {
	return { id: "start", at: day(1), kind: "start", contents: { range: [0, 0.15] }, gauge: 0.25, ...fields } as never;
}

export function aFill(fields: Fields = {}): FillEvent {
	const product = { id: "E85", range: [0.51, 0.83] };
	return { id: "fill", at: day(2), kind: "fill", stop: "stop", product, litres: 15.5, ...fields } as never;
}

export function aTankReading(fields: Fields = {}): TankReading {
	return { id: "tank", at: day(3), kind: "reading", of: "tank", value: 0.31, sd: 0.02, ...fields } as never;
}

export function aPumpReading(fields: Fields = {}): PumpReading {
	const product = { id: "E85", range: [0.51, 0.83] };
	const place = "Corner station";
	return {
		id: "pump",
		at: day(3),
		kind: "reading",
		of: "pump",
		value: 0.7,
		sd: 0.03,
		place,
		product,
		...fields,
	} as never;
}

export function aTrimReading(fields: Fields = {}): TrimReading {
	return {
		id: "trim",
		at: day(4),
		kind: "reading",
		of: "trim",
		value: 0.02,
		sd: 0.01,
		calibratedFor: 0.3,
		...fields,
	} as never;
}

export function aLevel(fields: Fields = {}): LevelEvent {
	return { id: "level", at: day(5), kind: "level", gauge: 0.5, ...fields } as never;
}

export function aFlash(fields: Fields = {}): CalibrationEvent {
	return { id: "flash", at: day(1), kind: "calibration", calibration: "e30", ...fields } as never;
}

export function aVoid(fields: Fields = {}): VoidEvent {
	return { id: "void", at: day(6), kind: "void", target: "level", ...fields } as never;
}

/** One of every kind. */
export function aLog(fields: Partial<Log> = {}): Log {
	const readings = [aTankReading(), aPumpReading(), aTrimReading()];
	return { car: aCar(), events: [aStart(), aFlash(), aFill(), ...readings, aLevel(), aVoid()], ...fields };
}

function day(n: number): string {
	return `2026-06-0${n}T17:30:00+02:00`;
}

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => x + 0);
const content = double(0, 1);
const range = fc.tuple(content, content).map(([a, b]) => [Math.min(a, b), Math.max(a, b)]);
const name = fc.string({ unit: "grapheme", minLength: 1, maxLength: 20 });
const sd = double(1e-6, 0.5);
const at = fc
	.tuple(
		fc.date({ min: new Date("1971-01-01"), max: new Date("2199-12-30"), noInvalidDate: true }),
		fc.constantFrom("Z", "+05:30", "-08:00"),
	)
	.map(([date, offset]) => date.toISOString().replace("Z", offset));
const product = fc.record({ id: name, range });
const of = (
	kind: string,
	fields: Record<string, fc.Arbitrary<unknown>>,
	optional: Record<string, fc.Arbitrary<unknown>> = {},
) =>
	fc
		.record(
			{ at, kind: fc.constant(kind), ...fields, ...optional },
			{ requiredKeys: ["at", "kind", ...Object.keys(fields)] as never },
		)
		.map((event) => event as Fields);
const reading = (what: string, fields: Record<string, fc.Arbitrary<unknown>>) =>
	of("reading", { of: fc.constant(what), sd, ...fields }, { method: name });

const unknownField = fc
	.jsonValue({ maxDepth: 3 })
	.filter((value) => !JSON.stringify(value).includes("__proto__"))
	// JSON does not write the sign of a zero.
	.map((value) => JSON.parse(JSON.stringify(value)));

/** An event without its id; voids and calibrations come with the whole log. */
const tankEvent = fc.oneof(
	of("start", { contents: fc.oneof(fc.record({ range }), fc.record({ value: content, sd })) }, { gauge: content }),
	of(
		"fill",
		{ stop: name, product, litres: double(0.01, 2000) },
		{
			place: name,
			gauge: content,
			toClick: fc.boolean(),
			odometerKm: double(0, 5e6),
			"a field of the future": unknownField,
		},
	),
	reading("tank", { value: content }),
	reading("pump", { value: content, place: name, product }),
	reading("trim", { value: double(-0.9, 9), calibratedFor: content }),
	of("level", { gauge: content }, { odometerKm: double(0, 5e6) }),
);

const calibrations = fc.uniqueArray(
	fc.record({ id: name, name, calibratedFor: content, window: range.filter(([low, high]) => low < high) }),
	{ selector: ({ id }) => id, maxLength: 3 },
);

/** Every log that the format allows, near enough. */
export const logs: fc.Arbitrary<Log> = fc
	.record({
		car: fc.record({ id: name, name, tank: fc.record({ capacityL: double(1, 2000) }), calibrations }),
		ids: fc.uniqueArray(name, { minLength: 1, maxLength: 12 }),
		drafts: fc.array(fc.tuple(tankEvent, at, fc.nat(), fc.nat(9)), { minLength: 12, maxLength: 12 }),
	})
	.map(({ car, ids, drafts }) => {
		const events = ids.map((id, i): Fields => {
			const [event, when, pick, kind] = drafts[i];
			const calibration = car.calibrations[pick % Math.max(1, car.calibrations.length)]?.id;
			if (kind === 0 && i > 0) return { id, at: when, kind: "void", target: ids[pick % i] };
			if (kind === 1 && calibration !== undefined) return { id, at: when, kind: "calibration", calibration };
			return { id, ...event };
		});
		return { car, events } as unknown as Log;
	});
