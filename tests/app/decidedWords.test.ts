import { expect, test } from "vitest";
import { differingIn } from "../../src/app/decidedWords";
import { readUnits } from "../../src/app/fuelSystemUnits";

const units = { volume: "L", fuelSystem: readUnits({ pressure: "bar" }, "de") } as const;

test("of a tank what differs is named, and nothing else", () => {
	expect(differingIn("tank", { capacityL: 80, gaugeSd: 0.15 }, { capacityL: 80, clickSd: 0.25 }, units)).toEqual([
		{ name: "Doubt of the gauge", own: "15\u00a0%", other: "nothing" },
		{ name: "Doubt of the nozzle’s click", own: "nothing", other: "25\u00a0%" },
	]);
	expect(differingIn("tank", { capacityL: 58 }, { capacityL: 50 }, units)).toEqual([
		{ name: "Tank", own: "58\u00a0L", other: "50\u00a0L" },
	]);
});

test("of a fuel system the fields are named as on its card, in its units", () => {
	const own = {
		injectorFlowCcPerMin: 550,
		injectorRatedKPa: 300,
		injectorCount: 4,
		spreads: { power: 0.05, trim: 0.1 },
	};
	const other = {
		injectorFlowCcPerMin: 550,
		injectorRatedKPa: 400,
		injectorCount: 6,
		spreads: { power: 0.1, trim: 0.1 },
	};
	expect(differingIn("fuelSystem", own, other, units)).toEqual([
		{ name: "Pressure at which that flow is stated", own: "3\u00a0bar", other: "4\u00a0bar" },
		{ name: "Number of injectors", own: "4", other: "6" },
		{ name: "Doubt of the power", own: "5\u00a0%", other: "10\u00a0%" },
	]);
	expect(differingIn("fuelSystem", undefined, { leanestLambda: 0.86 }, units)).toEqual([
		{ name: "Leanest lambda the tuner accepts there", own: "nothing", other: "0.86" },
	]);
});

test("a plain setting, and one of a later version, stand by themselves", () => {
	expect(differingIn("name", "Wagon", "Van", units)).toEqual([{ name: "Name", own: "Wagon", other: "Van" }]);
	expect(differingIn("wheels", [1], { a: { b: true } }, units)).toEqual([
		{ name: "“wheels”", own: "[1]", other: '{"a":{"b":true}}' },
	]);
});
