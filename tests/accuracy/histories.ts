/** Made-up histories, realistic and nasty, which together use every kind of event and every option of the log. */
import type {
	CalibrationEvent,
	Contents,
	FillEvent,
	LevelEvent,
	LogEvent,
	Product,
	PumpReading,
	StartEvent,
	TankReading,
	TrimReading,
	VoidEvent,
} from "../../src/domain/event";
import { contentRange, fraction, litres } from "../../src/domain/quantity";
import type { Calibration, Car } from "../../src/domain/vehicle";

export interface History {
	readonly name: string;
	readonly car: Car;
	readonly events: readonly LogEvent[];
}

const flexFuel = product("flex-us", 0.51, 0.83);
const flexFuelEU = product("flex-eu", 0.5, 0.85);
const flexFuelAU = product("flex-au", 0.7, 0.85);
const flex30 = product("flex-30", 0.25, 0.35);
const e10 = product("e10", 0.09, 0.1);
const upTo10 = product("up-to-10", 0, 0.1);
const ethanolFree = product("ethanol-free", 0, 0.008);
const e20 = product("e20", 0.1, 0.2);
const gasolineC = product("gasoline-c", 0.29, 0.31);
const e98 = product("e98", 0.921, 0.98);
const drumE85 = product("drum-e85", 0.85, 0.85);

const for30 = calibration("for-30", 0.3, 0.26, 0.34);
const for50 = calibration("for-50", 0.5, 0.42, 0.56);
const for70 = calibration("for-70", 0.7, 0.6, 0.8);
const for10 = calibration("for-10", 0.1, 0, 0.15);

const unknown: Contents = { range: contentRange(0, 0.85) };

export const histories: readonly History[] = [
	{
		name: "unknown start, then each stop buys flex fuel and E10 to the click",
		car: car(58, [for30]),
		events: [
			start("a01", "2025-03-01T08:00:00+01:00", unknown),
			fill("a02", "2025-03-01T08:10:00+01:00", flexFuel, 14, { stop: "s1", place: "north", gauge: fraction(0.2) }),
			fill("a03", "2025-03-01T08:14:00+01:00", e10, 31.5, { stop: "s1", place: "north", toClick: true }),
			fill("a04", "2025-03-09T17:30:00+01:00", flexFuel, 12, { stop: "s2", place: "north", gauge: fraction(0.3) }),
			fill("a05", "2025-03-09T17:34:00+01:00", e10, 28.2, { stop: "s2", place: "north", toClick: true }),
			fill("a06", "2025-03-20T07:05:00+01:00", flexFuel, 13, { stop: "s3", place: "south", gauge: fraction(0.25) }),
			fill("a07", "2025-03-20T07:09:00+01:00", e10, 29.7, { stop: "s3", place: "south", toClick: true }),
		],
	},
	{
		name: "no start at all, clicks and never a gauge",
		car: car(50, [for50]),
		events: [
			fill("b01", "2025-05-02T18:00:00+02:00", flexFuelEU, 30, { place: "ring", toClick: true }),
			fill("b02", "2025-05-11T18:20:00+02:00", upTo10, 10.4, { stop: "s2", place: "ring" }),
			fill("b03", "2025-05-11T18:26:00+02:00", flexFuelEU, 26.3, { stop: "s2", place: "ring", toClick: true }),
			fill("b04", "2025-05-23T06:40:00+02:00", flexFuelEU, 41.8, { place: "ring", toClick: true }),
			fill("b05", "2025-06-06T12:00:00+02:00", upTo10, 8, { stop: "s4" }),
			fill("b06", "2025-06-06T12:05:00+02:00", flexFuelEU, 33.1, { stop: "s4", toClick: true }),
			fill("b07", "2025-06-08T09:00:00+02:00", upTo10, 6.2, { toClick: true }),
		],
	},
	{
		name: "start by reading, places revisited after days and after months, fills at no place",
		car: car(64, [for70]),
		events: [
			start("c01", "2024-09-01T10:00:00-05:00", measured(0.62, 0.025), 0.4),
			fill("c02", "2024-09-03T10:00:00-05:00", flexFuel, 35, { place: "mill", gauge: fraction(0.3) }),
			fill("c03", "2024-09-07T19:15:00-05:00", flexFuel, 38, { place: "mill", gauge: fraction(0.35) }),
			tank("c04", "2024-09-08T08:00:00-05:00", 0.76, 0.025),
			fill("c05", "2024-09-15T08:30:00-05:00", flexFuel, 40, { place: "dock", gauge: fraction(0.3) }),
			fill("c06", "2024-09-24T21:00:00-05:00", flexFuel, 37, { gauge: fraction(0.4) }),
			fill("c07", "2025-02-10T07:45:00-06:00", flexFuel, 42, { place: "mill", gauge: fraction(0.25) }),
			tank("c08", "2025-02-10T08:30:00-06:00", 0.66, 0.025),
			fill("c09", "2025-02-19T07:45:00-06:00", flexFuel, 39, { place: "mill", gauge: fraction(0.3) }),
			fill("c10", "2025-03-02T07:45:00-06:00", flexFuel, 33, { place: "dock", gauge: fraction(0.45) }),
			fill("c11", "2025-03-09T20:10:00-05:00", flexFuel, 36, { gauge: fraction(0.4) }),
		],
	},
	{
		name: "pump samples before and after buying, one of them above the label",
		car: car(55, [for70]),
		events: [
			start("d01", "2025-06-01T09:00:00Z", range(0, 0.1), 0.15),
			pump("d02", "2025-06-01T09:05:00Z", "harbour", flexFuel, 0.9, 0.02),
			fill("d03", "2025-06-01T09:10:00Z", flexFuel, 40, { place: "harbour", gauge: fraction(0.15) }),
			pump("d04", "2025-06-01T09:20:00Z", "harbour", flexFuel, 0.87, 0.02),
			fill("d05", "2025-06-12T09:00:00Z", flexFuel, 35, { place: "airport", gauge: fraction(0.3) }),
			pump("d06", "2025-06-12T09:30:00Z", "airport", flexFuel, 0.74, 0.04),
			tank("d07", "2025-06-13T09:30:00Z", 0.74, 0.03),
			fill("d08", "2025-06-20T09:00:00Z", flexFuel, 30, { place: "harbour", gauge: fraction(0.35) }),
			pump("d09", "2025-06-20T09:00:00Z", "harbour", flexFuel, 0.2, 0.02),
			fill("d10", "2025-07-15T09:00:00Z", flexFuel, 38, { gauge: fraction(0.25) }),
		],
	},
	{
		name: "tank readings which contradict the account, then one which sides with them",
		car: car(47, [for50]),
		events: [
			start("e01", "2025-01-04T11:00:00+01:00", range(0.09, 0.1), 0.5),
			fill("e02", "2025-01-04T11:10:00+01:00", flexFuelEU, 22, { place: "hill", gauge: fraction(0.5), toClick: true }),
			tank("e03", "2025-01-05T08:00:00+01:00", 0.12, 0.025),
			fill("e04", "2025-01-15T17:00:00+01:00", flexFuelEU, 28, { place: "hill", gauge: fraction(0.3) }),
			tank("e05", "2025-01-16T08:00:00+01:00", 0.2, 0.025),
			tank("e06", "2025-01-17T08:00:00+01:00", 0.6, 0.025),
			level("e07", "2025-01-20T08:00:00+01:00", 0.5),
		],
	},
	{
		name: "trim readings on two calibrations flashed over time",
		car: car(60, [for10, for30, for50]),
		events: [
			start("f01", "2025-04-01T08:00:00+02:00", range(0, 0.1), 0.45),
			fill("f02", "2025-04-01T08:15:00+02:00", flexFuelEU, 14, { stop: "s1", place: "east", gauge: fraction(0.45) }),
			fill("f03", "2025-04-01T08:19:00+02:00", upTo10, 17.4, { stop: "s1", place: "east", toClick: true }),
			trim("f04", "2025-04-01T12:00:00+02:00", 0.07, 0.03, 0.1),
			flashed("f05", "2025-04-02T07:00:00+02:00", "for-30"),
			trim("f06", "2025-04-02T07:40:00+02:00", 0.01, 0.03, 0.3),
			fill("f07", "2025-04-12T08:00:00+02:00", flexFuelEU, 36, { place: "east", gauge: fraction(0.4) }),
			trim("f08", "2025-04-12T10:00:00+02:00", 0.1, 0.03, 0.3),
			flashed("f09", "2025-04-13T07:00:00+02:00", "for-50"),
			trim("f10", "2025-04-13T07:30:00+02:00", -0.25, 0.03, 0.5),
			tank("f11", "2025-04-14T07:30:00+02:00", 0.53, 0.02),
		],
	},
	{
		name: "a fill withdrawn, a withdrawal withdrawn, a flash withdrawn, events out of order",
		car: car(52, [for30, for70]),
		events: [
			fill("g06", "2025-08-20T19:00:00+02:00", e20, 25, { place: "west", gauge: fraction(0.5) }),
			voided("g09", "2025-08-21T07:02:00+02:00", "g08"),
			start("g01", "2025-08-01T09:00:00+02:00", unknown, 0.1),
			fill("g02", "2025-08-01T09:10:00+02:00", flexFuelEU, 51, { place: "west", gauge: fraction(0.1) }),
			voided("g03", "2025-08-01T09:12:00+02:00", "g02"),
			fill("g04", "2025-08-01T09:10:00+02:00", flexFuelEU, 15.1, { place: "west", gauge: fraction(0.1) }),
			tank("g05", "2025-08-02T09:00:00+02:00", 0.55, 0.03),
			tank("g07", "2025-08-21T07:00:00+02:00", 0.32, 0.03),
			voided("g08", "2025-08-21T07:01:00+02:00", "g07"),
			flashed("g10", "2025-08-01T08:00:00+02:00", "for-70"),
			voided("g11", "2025-08-25T08:00:00+02:00", "g10"),
			fill("g12", "2025-08-30T08:00:00+02:00", flexFuelEU, 20, { place: "west", gauge: fraction(0.45) }),
		],
	},
	{
		name: "a six-litre tank, nearly filled every time",
		car: car(6, [for30]),
		events: [
			start("h01", "2025-07-01T07:00:00+09:00", range(0.09, 0.1)),
			fill("h02", "2025-07-01T07:05:00+09:00", flexFuel, 1.5, { stop: "s1" }),
			fill("h03", "2025-07-01T07:07:00+09:00", e10, 3.4, { stop: "s1", toClick: true }),
			fill("h04", "2025-07-03T07:05:00+09:00", flexFuel, 1.2, { stop: "s2", place: "pass" }),
			fill("h05", "2025-07-03T07:07:00+09:00", e10, 4.6, { stop: "s2", place: "pass" }),
			fill("h06", "2025-07-05T07:05:00+09:00", flexFuel, 2, { stop: "s3", place: "pass", toClick: true }),
			fill("h07", "2025-07-06T18:00:00+09:00", ethanolFree, 5.9, { toClick: true }),
			level("h08", "2025-07-07T18:00:00+09:00", 0.6),
			fill("h09", "2025-07-07T18:30:00+09:00", flexFuel, 1.3, { gauge: fraction(0.5) }),
		],
	},
	{
		name: "a tank of 110 litres with looks at the gauge between stops",
		car: car(110, [for30]),
		events: [
			start("i01", "2025-02-01T06:00:00-03:00", range(0.29, 0.31), 0.9),
			level("i02", "2025-02-03T06:00:00-03:00", 0.6),
			level("i03", "2025-02-05T06:00:00-03:00", 0.35),
			fill("i04", "2025-02-06T06:00:00-03:00", e98, 20, { stop: "s1", gauge: fraction(0.2) }),
			fill("i05", "2025-02-06T06:05:00-03:00", gasolineC, 66, { stop: "s1", toClick: true }),
			level("i06", "2025-02-09T06:00:00-03:00", 0.65),
			fill("i07", "2025-02-12T06:00:00-03:00", gasolineC, 50, { place: "br-9" }),
			level("i08", "2025-02-12T06:30:00-03:00", 0.8),
			level("i09", "2025-02-12T06:31:00-03:00", 0.82),
			tank("i10", "2025-02-13T06:00:00-03:00", 0.36, 0.02),
		],
	},
	{
		name: "drained and started anew: what was learned of car and pumps stays",
		car: car(45, [for70]),
		events: [
			start("j01", "2025-03-10T10:00:00+11:00", unknown, 0),
			fill("j02", "2025-03-10T10:10:00+11:00", flexFuelAU, 41, { place: "quay", gauge: fraction(0), toClick: true }),
			pump("j03", "2025-03-10T10:15:00+11:00", "quay", flexFuelAU, 0.84, 0.02),
			level("j04", "2025-03-11T10:15:00+11:00", 0.98),
			start("j05", "2025-03-20T10:00:00+11:00", measured(0.02, 0.02)),
			level("j06", "2025-03-20T10:05:00+11:00", 0.1),
			fill("j07", "2025-03-20T10:20:00+11:00", flexFuelAU, 30, { place: "quay", gauge: fraction(0.08) }),
			start("j08", "2025-04-20T10:00:00+10:00", measured(0.99, 0.03), 1),
			fill("j09", "2025-04-22T10:20:00+10:00", flexFuelAU, 20, { place: "quay", gauge: fraction(0.5) }),
		],
	},
	{
		name: "a drum of known content, a fine gauge and a sharp click",
		car: car(70, [for50], { gaugeSd: 0.02, clickSd: 0.01 }),
		events: [
			start("k01", "2025-05-05T09:00:00+02:00", range(0, 0.05), 0.3),
			fill("k02", "2025-05-05T09:10:00+02:00", drumE85, 20, { place: "workshop", gauge: fraction(0.3) }),
			fill("k03", "2025-05-10T09:10:00+02:00", drumE85, 20, { stop: "s2", place: "workshop", gauge: fraction(0.4) }),
			fill("k04", "2025-05-10T09:20:00+02:00", e20, 23.1, { stop: "s2", place: "corner", toClick: true }),
			pump("k05", "2025-05-10T09:25:00+02:00", "corner", e20, 0.17, 0.02),
			pump("k06", "2025-05-11T09:25:00+02:00", "workshop", drumE85, 0.83, 0.02),
			fill("k07", "2025-05-20T09:10:00+02:00", drumE85, 12.5, { stop: "s3", gauge: fraction(0.45) }),
			fill("k08", "2025-05-20T09:20:00+02:00", e20, 26.4, { stop: "s3", place: "corner", toClick: true }),
			tank("k09", "2025-05-21T09:20:00+02:00", 0.47, 0.025),
		],
	},
	{
		name: "fills that hardly fit, against what the gauge said",
		car: car(48, [for30]),
		events: [
			start("l01", "2025-10-01T09:00:00+02:00", unknown, 0.35),
			fill("l02", "2025-10-01T09:30:00+02:00", flex30, 42, { place: "plain", gauge: fraction(0.3) }),
			fill("l03", "2025-10-08T09:30:00+02:00", flexFuel, 10, { stop: "s2", place: "plain", gauge: fraction(0.2) }),
			fill("l04", "2025-10-08T09:34:00+02:00", e10, 39, { stop: "s2", place: "plain" }),
			fill("l05", "2025-10-16T09:30:00+02:00", flexFuel, 11, { stop: "s3", place: "plain" }),
			fill("l06", "2025-10-16T09:34:00+02:00", e10, 40, { stop: "s3", place: "plain", toClick: true }),
			level("l07", "2025-10-16T10:00:00+02:00", 0.97),
			fill("l08", "2025-10-17T10:00:00+02:00", e10, 9, { place: "plain", gauge: fraction(0.9) }),
		],
	},
	{
		name: "one stop spread over readings, the gauge noted late, events of the same instant, no calibration",
		car: car(56, []),
		events: [
			start("m01", "2025-03-29T23:30:00+01:00", range(0, 0.85), 0.3),
			fill("m02", "2025-03-30T03:10:00+02:00", flexFuelEU, 12, { stop: "s1", place: "gate" }),
			pump("m03", "2025-03-30T03:12:00+02:00", "gate", flexFuelEU, 0.71, 0.04),
			tank("m04", "2025-03-30T01:13:00Z", 0.48, 0.04),
			fill("m05", "2025-03-30T03:20:00+02:00", upTo10, 9.5, { stop: "s1", place: "gate", gauge: fraction(0.25) }),
			fill("m06", "2025-03-30T01:20:00Z", flexFuelEU, 18.2, { stop: "s1", place: "gate", toClick: true }),
			tank("m07", "2025-03-30T03:20:00+02:00", 0.5, 0.03),
			fill("m08", "2025-04-06T03:20:00+02:00", flexFuelEU, 0, { place: "gate", gauge: fraction(0.6) }),
			tank("m09", "2025-04-06T04:00:00+02:00", 0.53, 0.03),
		],
	},
	{
		name: "a year on a window of seventy with seasons, a sensor and a sample now and then",
		car: car(60, [for70, for50]),
		events: [
			start("n01", "2024-06-01T08:00:00-06:00", measured(0.74, 0.04), 0.5),
			fill("n02", "2024-06-10T08:00:00-06:00", flexFuel, 40, { place: "mesa", gauge: fraction(0.3) }),
			fill("n03", "2024-07-02T08:00:00-06:00", flexFuel, 44.5, { place: "mesa", toClick: true }),
			tank("n04", "2024-07-03T08:00:00-06:00", 0.79, 0.025),
			fill("n05", "2024-10-05T08:00:00-06:00", flexFuel, 45, { place: "ford", gauge: fraction(0.2), toClick: true }),
			pump("n06", "2024-12-01T08:00:00-07:00", "ford", flexFuel, 0.58, 0.04),
			fill("n07", "2024-12-01T08:10:00-07:00", flexFuel, 42, { place: "ford", gauge: fraction(0.25) }),
			flashed("n08", "2024-12-02T08:10:00-07:00", "for-50"),
			fill("n09", "2024-12-20T08:10:00-07:00", flexFuel, 10, { stop: "s5", place: "mesa", gauge: fraction(0.5) }),
			fill("n10", "2024-12-20T08:14:00-07:00", e10, 19.6, { stop: "s5", place: "mesa", toClick: true }),
			trim("n11", "2024-12-21T08:10:00-07:00", -0.03, 0.03, 0.5),
			flashed("n12", "2025-05-20T08:00:00-06:00", "for-70"),
			fill("n13", "2025-05-20T08:10:00-06:00", flexFuel, 47, { place: "mesa", gauge: fraction(0.2) }),
			tank("n14", "2025-05-21T08:10:00-06:00", 0.66, 0.025),
		],
	},
];

function product(id: string, low: number, high: number): Product {
	return { id, range: contentRange(low, high) };
}

function calibration(id: string, calibratedFor: number, low: number, high: number): Calibration {
	return { id, name: id, calibratedFor: fraction(calibratedFor), window: contentRange(low, high) };
}

function car(
	capacityL: number,
	calibrations: readonly Calibration[],
	tank: { readonly gaugeSd?: number; readonly clickSd?: number } = {},
): Car {
	return { id: "car", name: "car", tank: { capacityL: litres(capacityL), ...tank }, calibrations };
}

function range(low: number, high: number): Contents {
	return { range: contentRange(low, high) };
}

function measured(value: number, sd: number): Contents {
	return { value: fraction(value), sd };
}

function start(id: string, at: string, contents: Contents, gauge?: number): StartEvent {
	return { id, at, kind: "start", contents, ...(gauge === undefined ? {} : { gauge: fraction(gauge) }) };
}

/** A stop of its own unless it names the stop it shares. */
function fill(
	id: string,
	at: string,
	bought: Product,
	volume: number,
	rest: Partial<Pick<FillEvent, "stop" | "place" | "gauge" | "toClick">> = {},
): FillEvent {
	return { id, at, kind: "fill", stop: id, product: bought, litres: litres(volume), ...rest };
}

function tank(id: string, at: string, value: number, sd: number): TankReading {
	return { id, at, kind: "reading", of: "tank", value: fraction(value), sd };
}

function pump(id: string, at: string, place: string, sampled: Product, value: number, sd: number): PumpReading {
	return { id, at, kind: "reading", of: "pump", place, product: sampled, value: fraction(value), sd, method: "tube" };
}

function trim(id: string, at: string, value: number, sd: number, calibratedFor: number): TrimReading {
	return { id, at, kind: "reading", of: "trim", value, sd, calibratedFor: fraction(calibratedFor) };
}

function level(id: string, at: string, gauge: number): LevelEvent {
	return { id, at, kind: "level", gauge: fraction(gauge) };
}

function flashed(id: string, at: string, to: string): CalibrationEvent {
	return { id, at, kind: "calibration", calibration: to };
}

function voided(id: string, at: string, target: string): VoidEvent {
	return { id, at, kind: "void", target };
}
