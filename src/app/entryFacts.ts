/** Everything an event says, as terms and what they are. */
import type { FillEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import type { Calibration, Car } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import { dateTime, distanceUnit, exactPercent, exactPercentRange, exactVolume, inTwenty } from "./format";
import { fillsIn, type LogItem, type ToldEvent } from "./logView";
import { unitPrice } from "./money";
import { typedOdometer } from "./stopDetails";
import { productName, productRange } from "./text";

export interface Fact {
	readonly term: string;
	readonly is: string;
}

const exact = new Intl.NumberFormat(undefined, { maximumFractionDigits: 9 });

/** What the whole entry says; of a stop, what its fills share. */
export function factsOf(item: LogItem, car: Car, unit: VolumeUnit): Fact[] {
	const [event] = item.events;
	const fills = fillsIn(item);
	if (fills.length === 0) return [{ term: "When", is: dateTime(item.at) }, ...factsOfOne(event, car, unit)];
	const place = fills.find((fill) => fill.place !== undefined)?.place;
	const gauge = fills.find((fill) => fill.gauge !== undefined)?.gauge;
	const km = fills.find((fill) => fill.odometerKm !== undefined)?.odometerKm;
	return [
		{ term: "When", is: dateTime(item.at) },
		{ term: "Place", is: place ?? "not named" },
		{ term: "Gauge before", is: gauge === undefined ? "not looked" : gaugeShare(gauge) },
		...odometer(km, unit),
	];
}

/** What one fill of a stop says; `currency`: ISO 4217, where the car has one. */
export function factsOfFill(fill: FillEvent, unit: VolumeUnit, currency: string | undefined): Fact[] {
	const { pricePerLitre } = fill;
	return [
		{ term: "Displayed", is: displayed(fill.litres, unit) },
		{ term: "Label allows", is: productRange(fill.product) },
		...(pricePerLitre === undefined ? [] : [{ term: "Price", is: unitPrice(pricePerLitre, unit, currency) }]),
		...(fill.toClick ? [{ term: "Filled", is: "to the nozzle’s first click" }] : []),
	];
}

function factsOfOne(event: ToldEvent, car: Car, unit: VolumeUnit): Fact[] {
	switch (event.kind) {
		case "start": {
			const { contents, gauge } = event;
			return [
				"range" in contents
					? { term: "In the tank", is: `${productRange({ id: "", range: contents.range })} ethanol` }
					: { term: "In the tank", is: `${plusMinus(contents.value, contents.sd)} ethanol` },
				{ term: "Gauge", is: gauge === undefined ? "not looked" : gaugeShare(gauge) },
			];
		}
		case "level":
			return [{ term: "Gauge", is: gaugeShare(event.gauge) }, ...odometer(event.odometerKm, unit)];
		case "reading":
			return [
				{ term: "Measured", is: plusMinus(event.value, event.sd) },
				...(event.method ? [{ term: "How", is: event.method }] : []),
				...(event.of === "trim" ? [{ term: "On a calibration for", is: exactPercent(event.calibratedFor) }] : []),
				...(event.of === "pump"
					? [
							{ term: "Fuel", is: `${productName(event.product)} (label: ${productRange(event.product)})` },
							{ term: "Place", is: event.place },
						]
					: []),
			];
		case "calibration": {
			const calibration = car.calibrations.find(({ id }) => id === event.calibration);
			return calibration ? factsOfCalibration(calibration) : [{ term: "Calibration", is: event.calibration }];
		}
		case "fill":
			return [];
	}
}

export function factsOfCalibration(calibration: Calibration): Fact[] {
	const { lean, knock } = budgetsOf(calibration);
	return [
		{ term: "Calibration", is: calibration.name },
		{ term: "Made for", is: exactPercent(calibration.calibratedFor) },
		{ term: "Window", is: exactPercentRange(...calibration.window) },
		{ term: "Accepted chance", is: `above: ${inTwenty(lean)}, below: ${inTwenty(knock)}` },
	];
}

/** In the car's unit, and as the log has it where that says more. */
function displayed(litres: number, unit: VolumeUnit): string {
	const shown = exactVolume(litres, unit);
	const tellsAll = unit === "L" && Math.round(litres * 1000) / 1000 === litres;
	return tellsAll ? shown : `${shown} (exactly ${exact.format(litres)}\u00a0L)`;
}

function plusMinus(value: number, sd: number): string {
	return `${exactPercent(value)} ± ${exactPercent(sd)}`;
}

function odometer(km: number | undefined, unit: VolumeUnit): Fact[] {
	return km === undefined ? [] : [{ term: "Odometer", is: `${typedOdometer(km, unit)}\u00a0${distanceUnit(unit)}` }];
}

function gaugeShare(gauge: number): string {
	return `${exactPercent(gauge)} of the tank`;
}
