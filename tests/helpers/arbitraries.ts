/** Random cars and logs for the laws of the core: believable ones, and ones that no car could have lived. */
import fc from "fast-check";
import type { LogEvent, Product } from "../../src/domain/event";
import type { Calibration, Car } from "../../src/domain/vehicle";

export interface SmallLog {
	readonly car: Car;
	readonly events: readonly LogEvent[];
}

/** An event before it gets its id and its time. */
type Draft = Record<string, unknown>;

const products: readonly Product[] = [
	{ id: "flex", range: [0.51, 0.83] },
	{ id: "e10", range: [0.09, 0.1] },
	{ id: "drum", range: [0.85, 0.85] },
] as never;

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true }).map((x) => x + 0);
const fraction = number(0, 1);
const product = fc.constantFrom(...products);
const place = fc.constantFrom("north", "south");
const name = fc.string({ minLength: 1, maxLength: 5 });
const interval = fc.tuple(fraction, fraction).map(([a, b]) => [Math.min(a, b), Math.max(a, b)]);

export const contentRanges = interval as unknown as fc.Arbitrary<Product["range"]>;

const for30 = { id: "for-30", name: "30", calibratedFor: 0.3, window: [0.26, 0.34] } as never;
const for70 = { id: "for-70", name: "70", calibratedFor: 0.7, window: [0.6, 0.8] } as never;

const car = fc.record({
	id: name,
	name: fc.constant("car"),
	tank: fc.record({ capacityL: fc.integer({ min: 40, max: 70 }) }),
	calibrations: fc.constantFrom<Calibration[]>([for30, for70], [for70], []),
});

const reading = fc.oneof(
	fc.record({ of: fc.constant("tank"), value: number(0.1, 0.8), sd: number(0.02, 0.05) }),
	fc.record({ of: fc.constant("trim"), value: number(-0.1, 0.1), sd: number(0.02, 0.05), calibratedFor: fraction }),
	fc.record({ of: fc.constant("pump"), value: number(0.5, 0.9), sd: number(0.02, 0.05), place, product }),
);

/** What happens between two drives: one or two fills at a pump, a reading, a look at the gauge. */
const happening = fc.oneof(
	{
		weight: 3,
		arbitrary: fc
			.record({
				first: product,
				second: fc.option(product),
				litres: fc.array(number(5, 18), { minLength: 2, maxLength: 2 }),
				place: fc.option(place, { nil: undefined }),
				gauge: fc.option(number(0.05, 0.5), { nil: undefined }),
				toClick: fc.boolean(),
			})
			.map(({ first, second, litres, place, gauge, toClick }) => {
				const at = place === undefined ? {} : { place };
				const fills: Draft[] = [{ kind: "fill", product: first, litres: litres[0], ...at }];
				if (second) fills.push({ kind: "fill", product: second, litres: litres[1], ...at });
				if (gauge !== undefined) Object.assign(fills[0], { gauge });
				if (toClick) Object.assign(fills[fills.length - 1], { toClick });
				return fills;
			}),
	},
	reading.map((fields) => [{ kind: "reading", ...fields }]),
	number(0, 1).map((gauge) => [{ kind: "level", gauge }]),
	fc.constant([{ kind: "calibration", calibration: "for-70" }]),
);

const beginning = fc.oneof(
	fc.record({ kind: fc.constant("start"), contents: fc.record({ range: interval }), gauge: number(0, 1) }),
	fc.record({ kind: fc.constant("start"), contents: fc.record({ value: fraction, sd: number(0.01, 0.1) }) }),
);

/** How an odometer is noted: the way since the last happening, which a slip may have made nonsense of, and when. */
const driven = fc.record({
	km: fc.oneof(
		{ weight: 8, arbitrary: number(5, 500) },
		{ weight: 1, arbitrary: fc.constant(0) },
		{ weight: 1, arbitrary: number(-90_000, 90_000) },
	),
	/** With the last product of a stop instead of the first. */
	late: fc.boolean(),
});

/** Logs as people keep them: days apart, two to `most` happenings after the start, with or without odometers. */
export function believableLogs(most: number): fc.Arbitrary<SmallLog> {
	return fc
		.record({
			car,
			beginning,
			happenings: fc.array(fc.tuple(happening, number(0.2, 40), fc.option(driven)), { minLength: 2, maxLength: most }),
			noting: fc.boolean(),
		})
		.map(({ car, beginning, happenings, noting }) => {
			const events = [timed(beginning, 0, 0)];
			let days = 0;
			let odometerKm = 100_000;
			for (const [drafts, wait, leg] of happenings) {
				days += wait;
				odometerKm += leg?.km ?? 100;
				const stop = `stop at ${days}`;
				const noted = noting && leg ? (leg.late ? drafts.length - 1 : 0) : -1;
				for (const [i, draft] of (drafts as Draft[]).entries()) {
					const own: Draft = draft.kind === "fill" ? { ...draft, stop } : { ...draft };
					if (i === noted && (own.kind === "fill" || own.kind === "level")) Object.assign(own, { odometerKm });
					events.push(timed(own, events.length, days + events.length / 1440));
				}
			}
			return { car, events } as unknown as SmallLog;
		});
}

function timed(draft: Draft, index: number, days: number): Draft {
	return { id: `event ${index}`, at: new Date(1.75e12 + days * 86_400_000).toISOString(), ...draft };
}

const sd = fc.oneof(number(1e-6, 0.5), fc.constantFrom(5e-324, 1e-40, 1e-12, 10, 1e17, 1e308));
const absurdProduct = fc.record({
	id: fc.constantFrom("a", "b"),
	range: fc.oneof(interval, fc.constantFrom([0, 0], [1, 1], [0.3, 0.3], [0, 1])),
});
const odometer = fc.oneof(number(0, 5e6), fc.constantFrom(0, 5e-324, 1e-7, 1000, 1000.0000001, 1300, 5e6));
const edge = fc.oneof(fraction, fc.constantFrom(0, 1, 0.3, 5e-324));
const absurdEvent: fc.Arbitrary<Draft> = fc.oneof(
	fc.record(
		{
			kind: fc.constant("start"),
			contents: fc.oneof(fc.record({ range: absurdProduct.map((p) => p.range) }), fc.record({ value: edge, sd })),
			gauge: edge,
		},
		{ requiredKeys: ["kind", "contents"] },
	),
	fc.record(
		{
			kind: fc.constant("fill"),
			stop: fc.constantFrom("s", "t", "u"),
			product: absurdProduct,
			litres: fc.oneof(number(0.01, 2000), fc.constantFrom(5e-324, 1e-9, 2000)),
			place,
			gauge: edge,
			toClick: fc.boolean(),
			odometerKm: odometer,
		},
		{ requiredKeys: ["kind", "stop", "product", "litres"] },
	),
	fc.record({ kind: fc.constant("level"), gauge: edge, odometerKm: odometer }, { requiredKeys: ["kind", "gauge"] }),
	fc.record({ kind: fc.constant("reading"), of: fc.constant("tank"), value: edge, sd }),
	fc.record({ kind: fc.constant("reading"), of: fc.constant("pump"), value: edge, sd, place, product: absurdProduct }),
	fc.record({
		kind: fc.constant("reading"),
		of: fc.constant("trim"),
		value: fc.oneof(number(-0.9, 9), fc.constant(0)),
		sd,
		calibratedFor: edge,
	}),
);

/** Everything the format allows, likely or not: fills that no tank holds, readings that contradict each other, any order of dates. */
export function absurdLogs(most: number): fc.Arbitrary<SmallLog> {
	return fc
		.record({
			car: fc.record({
				id: name,
				name: fc.constant("car"),
				tank: fc.record(
					{
						capacityL: fc.oneof(number(1, 100), fc.constantFrom(1e-3, 2000)),
						gaugeSd: fc.oneof(number(1e-3, 0.5), fc.constant(1e-9)),
						clickSd: fc.oneof(number(1e-3, 0.5), fc.constant(1e-9)),
					},
					{ requiredKeys: ["capacityL"] },
				),
				calibrations: interval.map(([low, high]) => [
					{ id: "only", name: "only", calibratedFor: low, window: [low, high] } as never,
				]),
			}),
			events: fc.array(fc.tuple(absurdEvent, fc.oneof(fc.constant(0), fc.integer({ min: 0, max: 230 * 365 }))), {
				minLength: 1,
				maxLength: most,
			}),
		})
		.map(({ car, events }) => {
			const dated = events.map(([draft, day], i) => ({
				id: `event ${i}`,
				at: new Date(day * 86_400_000).toISOString(),
				...draft,
			}));
			return { car, events: dated } as unknown as SmallLog;
		});
}
