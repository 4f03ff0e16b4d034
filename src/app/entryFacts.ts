/** Everything an event says, as terms and what they are. */
import type { FillEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import type { Calibration, Car } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import { dateTime, distanceUnit, exactPercent, exactPercentRange, exactVolume, inTwenty } from "./format";
import { numbers } from "./formatters";
import { fillsIn, type LogItem, type ToldEvent } from "./logView";
import { unitPrice } from "./money";
import { typedOdometer } from "./stopDetails";
import { productName, productRange } from "./text";
import { entryScreenWords } from "./words/entry";
import { methodsWords } from "./words/methods";

export interface Fact {
	readonly term: string;
	readonly is: string;
}

const exact = numbers({ maximumFractionDigits: 9 });

/** What the whole entry says; of a stop, what its fills share. */
export function factsOf(item: LogItem, car: Car, unit: VolumeUnit): Fact[] {
	const [event] = item.events;
	const words = entryScreenWords().facts;
	const fills = fillsIn(item);
	if (fills.length === 0) return [{ term: words.when, is: dateTime(item.at) }, ...factsOfOne(event, car, unit)];
	const place = fills.find((fill) => fill.place !== undefined)?.place;
	const gauge = fills.find((fill) => fill.gauge !== undefined)?.gauge;
	const km = fills.find((fill) => fill.odometerKm !== undefined)?.odometerKm;
	return [
		{ term: words.when, is: dateTime(item.at) },
		{ term: words.place, is: place ?? words.notNamed },
		{ term: words.gaugeBefore, is: gaugeShare(gauge) },
		...odometer(km, unit),
	];
}

/** What one fill of a stop says; `currency`: ISO 4217, where the car has one. */
export function factsOfFill(fill: FillEvent, unit: VolumeUnit, currency: string | undefined): Fact[] {
	const { pricePerLitre } = fill;
	const words = entryScreenWords().facts;
	return [
		{ term: words.displayed, is: displayed(fill.litres, unit) },
		{ term: words.labelAllows, is: productRange(fill.product) },
		...(pricePerLitre === undefined ? [] : [{ term: words.price, is: unitPrice(pricePerLitre, unit, currency) }]),
		...(fill.toClick ? [{ term: words.filled, is: words.toClick }] : []),
	];
}

function factsOfOne(event: ToldEvent, car: Car, unit: VolumeUnit): Fact[] {
	const words = entryScreenWords().facts;
	switch (event.kind) {
		case "start": {
			const { contents, gauge } = event;
			return [
				{
					term: words.inTank,
					is: words.ethanol(
						"range" in contents
							? productRange({ id: "", range: contents.range })
							: plusMinus(contents.value, contents.sd),
					),
				},
				{ term: words.gauge, is: gaugeShare(gauge) },
			];
		}
		case "level":
			return [{ term: words.gauge, is: gaugeShare(event.gauge) }, ...odometer(event.odometerKm, unit)];
		case "reading":
			return [
				{ term: words.measured, is: plusMinus(event.value, event.sd) },
				...(event.method ? [{ term: words.how, is: methodsWords().told(event.method) }] : []),
				...(event.of === "trim" ? [{ term: words.onCalibration, is: exactPercent(event.calibratedFor) }] : []),
				...(event.of === "pump"
					? [
							{ term: words.fuel, is: words.labelled(productName(event.product), productRange(event.product)) },
							{ term: words.place, is: event.place },
						]
					: []),
			];
		case "calibration": {
			const calibration = car.calibrations.find(({ id }) => id === event.calibration);
			return calibration ? factsOfCalibration(calibration) : [{ term: words.calibration, is: event.calibration }];
		}
		case "fill":
			return [];
	}
}

export function factsOfCalibration(calibration: Calibration): Fact[] {
	const { lean, knock } = budgetsOf(calibration);
	const words = entryScreenWords().facts;
	return [
		{ term: words.calibration, is: calibration.name },
		{ term: words.madeFor, is: exactPercent(calibration.calibratedFor) },
		{ term: words.window, is: exactPercentRange(...calibration.window) },
		{ term: words.accepted, is: words.acceptedChances(inTwenty(lean), inTwenty(knock)) },
	];
}

/** In the car's unit, and as the log has it where that says more. */
function displayed(litres: number, unit: VolumeUnit): string {
	const shown = exactVolume(litres, unit);
	const tellsAll = unit === "L" && Math.round(litres * 1000) / 1000 === litres;
	return tellsAll ? shown : entryScreenWords().facts.exactly(shown, `${exact.format(litres)}\u00a0L`);
}

function plusMinus(value: number, sd: number): string {
	return `${exactPercent(value)} ± ${exactPercent(sd)}`;
}

function odometer(km: number | undefined, unit: VolumeUnit): Fact[] {
	if (km === undefined) return [];
	return [{ term: entryScreenWords().facts.odometer, is: `${typedOdometer(km, unit)}\u00a0${distanceUnit(unit)}` }];
}

function gaugeShare(gauge: number | undefined): string {
	const words = entryScreenWords().facts;
	return gauge === undefined ? words.notLooked : words.ofTank(exactPercent(gauge));
}
