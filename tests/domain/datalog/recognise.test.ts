import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { recognisedAll } from "../../../src/domain/datalog/recognise";
import { isOfUse, lacksOf, type Role, tellsTrim, type Unit } from "../../../src/domain/datalog/role";

function one(header: string, unitBelow = "") {
	const [column] = recognisedAll([header], [unitBelow]);
	return column && [column.role, column.unit];
}

const known: readonly [header: string, role: Role, unit: Unit | null][] = [
	["Time", "time", null],
	["Time (s)", "time", "s"],
	["time [ms]", "time", "ms"],
	["TIME_MS", "time", "ms"],
	["Elapsed time, min", "time", "min"],
	["Timestamp", "time", null],
	["Time (HH:MM:SS)", "time", null],
	["Device Time", "time", null],
	["Engine Speed (rpm)", "rpm", "rpm"],
	["Engine RPM", "rpm", "rpm"],
	["RPM", "rpm", "rpm"],
	["EngineSpeed [1/min]", "rpm", "rpm"],
	["Vehicle speed (km/h)", "speed", "km/h"],
	["VSS", "speed", null],
	["Speed (mph)", "speed", "mph"],
	["Engine Coolant Temperature (°C)", "coolant", "°C"],
	["Coolant temp, deg F", "coolant", "°F"],
	["ECT", "coolant", null],
	["Coolant Temperature (\u00c2\u00b0C)", "coolant", "°C"],
	["Coolant Temperature (\ufffdF)", "coolant", "°F"],
	["Absolute Throttle Position (%)", "throttle", "%"],
	["TP", "throttle", null],
	["throttle_position", "throttle", null],
	["Calculated load value (%)", "load", "%"],
	["LOAD_PCT", "load", "%"],
	["Intake Manifold Absolute Pressure (kPa)", "manifold", "kPa"],
	["MAP (psi)", "manifold", "psi"],
	["Short Term Fuel Trim - Bank 1 (%)", "short1", "%"],
	["Short term fuel % trim—Bank 1", "short1", "%"],
	["SHRTFT1", "short1", null],
	["STFT B1 [%]", "short1", "%"],
	["Fuel trim bank 1 short term", "short1", null],
	["Long Term Fuel Trim (Bank 1) (%)", "long1", "%"],
	["LONGFT1", "long1", null],
	["LTFT", "long1", null],
	["STFT2", "short2", null],
	["Short Term Fuel Trim Bank 2 (%)", "short2", "%"],
	["LONGFT2", "long2", null],
	["LT FT B2 (%)", "long2", "%"],
	["Total fuel trim (%)", "total", "%"],
	["Lambda", "lambda", null],
	["λ measured", "lambda", null],
	["Air/Fuel Ratio (Measured)", "lambda", null],
	["AFR", "lambda", null],
	["O2 Sensor1 Equivalence Ratio", "lambda", null],
	["EQ_RAT11", "lambda", null],
	["Commanded Equivalence Ratio (lambda)", "commanded", "lambda"],
	["EQ_RAT", "commanded", null],
	["Lambda target", "commanded", null],
	["AFR commanded", "commanded", null],
	["Desired A/F", "commanded", null],
	["FUELSYS1", "fuelSystem", "state"],
	["Fuel system 1 status", "fuelSystem", "state"],
	["Ethanol fuel %", "ethanol", "%"],
	["ALCH_PCT", "ethanol", "%"],
];

describe("recognisedAll()", () => {
	test.each(known)("reads “%s” as %s", (header, role, unit) => {
		expect(one(header)).toEqual([role, unit]);
	});

	test("leaves alone what only sounds like it", () => {
		for (const header of [
			"Injection time (ms)",
			"Ignition timing (°)",
			"Intake air temperature (°C)",
			"Engine oil temperature (°C)",
			"Barometric pressure (kPa)",
			"Fuel pressure (kPa)",
			"Turbine speed (rpm)",
			"O2 sensor 1 voltage (V)",
			"Lambda sensor (V)",
			"Lambda error",
			"Lambda control",
			"Short term secondary O2 sensor fuel trim bank 1 (%)",
			"SHRTFT12",
			"Short term fuel trim bank 3 (%)",
			"Target throttle (%)",
			"Fuel temperature",
			"Ethanol temperature (°C)",
			"Alternator load (%)",
			"Boost target (kPa)",
			"Battery voltage (V)",
			"Mass air flow (g/s)",
			"Notes",
			"",
		])
			expect(one(header), header).toBeNull();
	});

	test("takes the unit from a row of units where the header has none, and drops a column in a strange unit", () => {
		expect(one("Coolant temperature", "°F")).toEqual(["coolant", "°F"]);
		expect(one("Lambda", "V")).toBeNull();
		expect(one("Engine load", "g/rev")).toBeNull();
		expect(one("Short term fuel trim", "no unit")).toEqual(["short1", null]);
	});

	test("takes the first of two that are the same, and the second best only where the best is missing", () => {
		const roles = (...headers: string[]) => recognisedAll(headers).map((column) => column?.role ?? null);
		expect(roles("Lambda", "Lambda 1 measured")).toEqual(["lambda", null]);
		expect(roles("Relative throttle position", "Throttle position")).toEqual([null, "throttle"]);
		expect(roles("Relative throttle position", "Speed")).toEqual(["throttle", "speed"]);
		expect(roles("Time since engine start (s)", "Time")).toEqual([null, "time"]);
		expect(roles("RUNTM", "ECT")).toEqual(["time", "coolant"]);
	});

	test("does not mind capitals, nor what separates the words", () => {
		const header = fc.constantFrom(...known.filter(([header]) => /^[\w %()]+$/.test(header)));
		fc.assert(
			fc.property(header, fc.constantFrom(" ", "_", "  ", " - ", "."), fc.boolean(), ([header, role], gap, upper) => {
				const [name, unit = ""] = header.split(/(?= \()/);
				const spelled = name.replaceAll(" ", gap) + unit;
				expect(one(upper ? spelled.toUpperCase() : spelled.toLowerCase())?.[0]).toBe(role);
			}),
		);
	});
});

describe("what a log lacks", () => {
	const columns = (...roles: Role[]) => roles.map((role) => ({ role, unit: null }));
	test("a trim needs the time, both trims of one bank, and what tells steady driving", () => {
		expect(lacksOf(columns("time", "short1", "long1", "throttle"))).toEqual([]);
		expect(lacksOf(columns("time", "total", "speed", "rpm"))).toEqual([]);
		expect(lacksOf(columns("short1", "long2", "speed"))).toEqual(["time", "trims", "driving"]);
		expect(tellsTrim((role) => role === "short2" || role === "long2")).toBe(true);
	});
	test("without trims lambda under load or the reported content are of use, but never without the time", () => {
		expect(isOfUse(columns("time", "lambda", "commanded", "load"))).toBe(true);
		expect(isOfUse(columns("time", "ethanol"))).toBe(true);
		expect(isOfUse(columns("time", "lambda", "load"))).toBe(false);
		expect(isOfUse(columns("time", "lambda", "commanded"))).toBe(false);
		expect(isOfUse(columns("time", "short1", "long1"))).toBe(false);
		expect(isOfUse([null, ...columns("time", "short1", "long1", "throttle"), null])).toBe(true);
		expect(isOfUse(columns("ethanol", "short1", "long1", "throttle"))).toBe(false);
	});
});
