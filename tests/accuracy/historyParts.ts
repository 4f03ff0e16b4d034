/** What the histories are made of: products, calibrations, cars, and short words for events. */
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

export const flexFuel = product("flex-us", 0.51, 0.83);
export const flexFuelEU = product("flex-eu", 0.5, 0.85);
export const flexFuelAU = product("flex-au", 0.7, 0.85);
export const flex30 = product("flex-30", 0.25, 0.35);
export const e10 = product("e10", 0.09, 0.1);
export const upTo10 = product("up-to-10", 0, 0.1);
export const ethanolFree = product("ethanol-free", 0, 0.008);
export const e20 = product("e20", 0.1, 0.2);
export const gasolineC = product("gasoline-c", 0.29, 0.31);
export const e98 = product("e98", 0.921, 0.98);
export const drumE85 = product("drum-e85", 0.85, 0.85);

export const for30 = calibration("for-30", 0.3, 0.26, 0.34);
export const for50 = calibration("for-50", 0.5, 0.42, 0.56);
export const for70 = calibration("for-70", 0.7, 0.6, 0.8);
export const for10 = calibration("for-10", 0.1, 0, 0.15);

export const unknown: Contents = { range: contentRange(0, 0.85) };

export function product(id: string, low: number, high: number): Product {
	return { id, range: contentRange(low, high) };
}

export function calibration(id: string, calibratedFor: number, low: number, high: number): Calibration {
	return { id, name: id, calibratedFor: fraction(calibratedFor), window: contentRange(low, high) };
}

export function car(
	capacityL: number,
	calibrations: readonly Calibration[],
	tank: { readonly gaugeSd?: number; readonly clickSd?: number } = {},
): Car {
	return { id: "car", name: "car", tank: { capacityL: litres(capacityL), ...tank }, calibrations };
}

export function range(low: number, high: number): Contents {
	return { range: contentRange(low, high) };
}

export function measured(value: number, sd: number): Contents {
	return { value: fraction(value), sd };
}

export function start(id: string, at: string, contents: Contents, gauge?: number): StartEvent {
	return { id, at, kind: "start", contents, ...(gauge === undefined ? {} : { gauge: fraction(gauge) }) };
}

/** A stop of its own unless it names the stop it shares. */
export function fill(
	id: string,
	at: string,
	bought: Product,
	volume: number,
	rest: Partial<Pick<FillEvent, "stop" | "place" | "gauge" | "toClick" | "odometerKm">> = {},
): FillEvent {
	return { id, at, kind: "fill", stop: id, product: bought, litres: litres(volume), ...rest };
}

export function tank(id: string, at: string, value: number, sd: number): TankReading {
	return { id, at, kind: "reading", of: "tank", value: fraction(value), sd };
}

export function pump(id: string, at: string, place: string, sampled: Product, value: number, sd: number): PumpReading {
	return { id, at, kind: "reading", of: "pump", place, product: sampled, value: fraction(value), sd, method: "tube" };
}

export function trim(id: string, at: string, value: number, sd: number, calibratedFor: number): TrimReading {
	return { id, at, kind: "reading", of: "trim", value, sd, calibratedFor: fraction(calibratedFor) };
}

/** A trim whose sd is for the larger part the car's own and the same in all its trims. */
export function taughtTrim(
	id: string,
	at: string,
	value: number,
	calibratedFor: number,
	{ sd, baselineSd } = { sd: 0.03, baselineSd: 0.025 },
): TrimReading {
	return { ...trim(id, at, value, sd, calibratedFor), baselineSd };
}

export function level(id: string, at: string, gauge: number, odometerKm?: number): LevelEvent {
	return { id, at, kind: "level", gauge: fraction(gauge), ...(odometerKm === undefined ? {} : { odometerKm }) };
}

export function flashed(id: string, at: string, to: string): CalibrationEvent {
	return { id, at, kind: "calibration", calibration: to };
}

export function voided(id: string, at: string, target: string): VoidEvent {
	return { id, at, kind: "void", target };
}
