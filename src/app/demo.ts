/** An invented car with seven months of invented stops, to look around with. Its id tells the screens to say so. */
import { catalogue } from "../domain/catalogue";
import type { LogEvent, Product } from "../domain/event";
import { contentRange, fraction, litres } from "../domain/quantity";
import { litresPer } from "../domain/units";
import type { Car } from "../domain/vehicle";
import { isoWithOffset } from "./app";
import { demoWords } from "./words/demo";

function demoCar(): Car {
	const { car, gasoline, blend } = demoWords();
	return {
		id: "invented-1",
		name: car,
		tank: { capacityL: litres(50) },
		currency: "USD",
		calibrations: [
			{ id: "invented-gasoline", name: gasoline, calibratedFor: fraction(0.1), window: contentRange(0, 0.15) },
			{ id: "invented-30", name: blend, calibratedFor: fraction(0.3), window: contentRange(0.26, 0.34) },
		],
	};
}

interface Stop {
	readonly daysAgo: number;
	/** Hour of the day, local. */
	readonly hour: number;
	readonly place: "mill" | "harbour" | "ring";
	readonly flex?: number;
	readonly e10: number;
	/** As read before pumping, sixteenths. */
	readonly gauge?: number;
	/** Odometer. */
	readonly km?: number;
	/** Dollars a gallon: of the gasoline, and of the flex fuel where there was some. */
	readonly paid?: readonly [e10: number, flex?: number];
}

/** Litres as a careful driver with a 72 % flex fuel in mind would have pumped them. */
const stops: readonly Stop[] = [
	{ daysAgo: 213, hour: 18, place: "mill", e10: 39.49, gauge: 3, km: 84210, paid: [3.479] },
	{ daysAgo: 203, hour: 8, place: "ring", e10: 41.22, km: 84709 },
	{ daysAgo: 192, hour: 17, place: "mill", e10: 34.91, gauge: 5, km: 85125, paid: [3.489] },
	{ daysAgo: 180, hour: 10, place: "harbour", flex: 15, e10: 22.3, gauge: 4, km: 85569, paid: [3.459, 2.669] },
	{ daysAgo: 170, hour: 18, place: "harbour", flex: 13, e10: 27.67, gauge: 3, km: 86065, paid: [3.459, 2.599] },
	{ daysAgo: 158, hour: 7, place: "mill", flex: 11.5, e10: 23.59, paid: [3.539, 2.669] },
	{ daysAgo: 147, hour: 18, place: "harbour", flex: 10.5, e10: 26.65, gauge: 4, km: 86918, paid: [3.449, 2.649] },
	{ daysAgo: 134, hour: 16, place: "mill", flex: 13, e10: 24.24, km: 87341, paid: [3.449, 2.659] },
	{ daysAgo: 121, hour: 11, place: "harbour", flex: 12.5, e10: 27.92, gauge: 3, km: 87831 },
	{ daysAgo: 109, hour: 18, place: "harbour", flex: 11.5, e10: 25.74, km: 88292, paid: [3.489, 2.619] },
	{
		daysAgo: 97,
		hour: 20,
		place: "ring",
		flex: 12.5,
		e10: 25.27,
		gauge: 4,
		km: 88748,
		paid: [3.669, 2.899],
	},
	{ daysAgo: 84, hour: 18, place: "harbour", flex: 11, e10: 26, km: 89189, paid: [3.659, 2.829] },
	{ daysAgo: 71, hour: 9, place: "mill", flex: 13.5, e10: 26.32, gauge: 3, km: 89644, paid: [3.669, 2.889] },
	{ daysAgo: 58, hour: 18, place: "harbour", flex: 11.5, e10: 28.17, km: 90094, paid: [3.699, 2.899] },
	{ daysAgo: 44, hour: 17, place: "mill", flex: 11.5, e10: 28.25, gauge: 3, km: 90570, paid: [3.739, 2.879] },
	{ daysAgo: 31, hour: 12, place: "harbour", flex: 10.5, e10: 26.03, gauge: 4, km: 91017, paid: [3.609, 2.759] },
	{ daysAgo: 17, hour: 19, place: "ring", flex: 12, e10: 23.68, km: 91430, paid: [3.629, 2.829] },
	{ daysAgo: 4, hour: 18, place: "harbour", flex: 14.5, e10: 26.54, gauge: 3, km: 91916, paid: [3.499, 2.699] },
];

/** The same for the same `now`; ids never change, so that it is one log wherever it goes. */
export function demoLog(now: number): { readonly car: Car; readonly events: readonly LogEvent[] } {
	const at = (daysAgo: number, hour: number, minute = 0) => {
		const day = new Date(now);
		day.setDate(day.getDate() - daysAgo);
		return isoWithOffset(day.setHours(hour, minute, 0, 0));
	};
	const [flex, e10] = ["flex-51-83", "gasoline-e10"].map(product);
	const { places } = demoWords();
	const by = { method: "ethanol sensor", sd: 0.025 };
	const others: LogEvent[] = [
		{ kind: "calibration", id: "invented-flash-1", at: at(214, 9), calibration: "invented-gasoline" },
		{ kind: "start", id: "invented-start", at: at(214, 9, 5), contents: { range: e10.range }, gauge: fraction(0.375) },
		{ kind: "reading", of: "tank", id: "invented-reading-1", at: at(179, 8), value: fraction(0.29), ...by },
		{ kind: "calibration", id: "invented-flash-2", at: at(179, 9), calibration: "invented-30" },
		{
			kind: "reading",
			of: "pump",
			id: "invented-sample-1",
			at: at(121, 10, 50),
			place: places.harbour,
			product: flex,
			value: fraction(0.77),
			sd: 0.04,
			method: "water tube",
		},
		{
			kind: "reading",
			of: "pump",
			id: "invented-sample-2",
			at: at(31, 11, 50),
			place: places.harbour,
			product: flex,
			value: fraction(0.73),
			sd: 0.04,
			method: "water tube",
		},
		{ kind: "level", id: "invented-level-1", at: at(103, 7), gauge: fraction(0.5625) },
	];
	const fills = stops.flatMap(({ daysAgo, hour, place, flex: flexLitres, e10: e10Litres, gauge, km, paid }, i) => {
		const stop = `invented-stop-${i + 1}`;
		const shared = { kind: "fill", stop, place: places[place] } as const;
		const looked = {
			...(gauge === undefined ? {} : { gauge: fraction(gauge / 16) }),
			...(km === undefined ? {} : { odometerKm: km }),
		};
		const last = { ...shared, ...priced(paid?.[0]), product: e10, litres: litres(e10Litres), toClick: true };
		if (flexLitres === undefined) return [{ ...last, ...looked, id: `${stop}-e10`, at: at(daysAgo, hour) }];
		return [
			{
				...shared,
				...looked,
				...priced(paid?.[1]),
				id: `${stop}-flex`,
				at: at(daysAgo, hour),
				product: flex,
				litres: litres(flexLitres),
			},
			{ ...last, id: `${stop}-e10`, at: at(daysAgo, hour, 4) },
		];
	});
	return { car: demoCar(), events: [...others, ...fills] };
}

function priced(perGallon: number | undefined) {
	return perGallon === undefined ? {} : { pricePerLitre: perGallon / litresPer.gal };
}

function product(id: string): Product {
	const found = catalogue.find((entry) => entry.id === id);
	if (!found) throw new RangeError(`product must be in the catalogue, got ${id}`);
	return { id, range: found.range };
}
