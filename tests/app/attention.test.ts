import { describe, expect, test } from "vitest";
import { byNeed, daysSilent, fleetOf, isOver, needOf, silentDays } from "../../src/app/attention";
import type { FleetCar } from "../../src/keeper/glance";
import { aCalibration } from "../helpers/logs";

const now = Date.parse("2026-06-20T12:00:00Z");
const ago = (days: number) => new Date(now - days * 86_400_000).toISOString();

function aRow(carId: string, below: number, above: number, fields: Partial<FleetCar> = {}): FleetCar {
	const figures = { median: 0.3, low: 0.27, high: 0.33, below, above } as never;
	const usual = { carId, name: carId, figures, calibration: aCalibration(), surprise: null, grave: false };
	return { ...usual, lastAt: ago(1), current: true, checked: false, ...fields };
}

const noFigures = { figures: null, lastAt: null };
const cars: readonly FleetCar[] = [
	aRow("lean", 0, 0.9),
	aRow("weak", 0.6, 0),
	aRow("doubt", 0, 0.01, { grave: true }),
	aRow("maybe", 0, 0.2),
	aRow("maybe less", 0.1, 0),
	aRow("odd", 0, 0, { surprise: { kind: "impossibleLevel" } }),
	aRow("long silent", 0, 0, { lastAt: ago(40) }),
	aRow("silent", 0, 0, { lastAt: ago(silentDays) }),
	aRow("windowless", 0, 0, { calibration: null }),
	aRow("unknown", 0, 0, noFigures),
	aRow("coming", 0, 0, { ...noFigures, current: false }),
	aRow("fine, last heard of", 0, 0, { lastAt: ago(5) }),
	aRow("fine", 0, 0),
];

test("what needs attention comes first, from any order", () => {
	const names = cars.map(({ name }) => name);
	expect(
		[...cars]
			.reverse()
			.sort(byNeed(now))
			.map(({ name }) => name),
	).toEqual(names);
	expect(fleetOf([...cars].reverse(), now).cars.map(({ name }) => name)).toEqual(names);
});

test("over a limit are cars with a warning or a contradiction, not those that are only silent", () => {
	expect(fleetOf(cars, now).over).toEqual(["lean", "weak", "doubt", "maybe", "maybe less", "odd"]);
});

describe("what the driver has gone through", () => {
	test("counts no more, be it a contradiction or one odd entry", () => {
		const surprise = { kind: "disagrees", chance: 0.001 } as const;
		for (const fields of [{ grave: true }, { surprise }, { grave: true, surprise }]) {
			expect(isOver(aRow("a", 0, 0, fields))).toBe(true);
			expect(isOver(aRow("a", 0, 0, { ...fields, checked: true }))).toBe(false);
			expect(needOf(aRow("a", 0, 0, { ...fields, checked: true }), now)).toBe("fine");
		}
	});
	test("does not hide a blend outside its window", () => {
		expect(isOver(aRow("a", 0, 0.2, { grave: true, checked: true }))).toBe(true);
		expect(needOf(aRow("a", 0, 0.2, { grave: true, checked: true }), now)).toBe("maybe");
	});
});

test("the limits are those of the calibration", () => {
	const strict = aCalibration({ leanBudget: 0.001 });
	expect(isOver(aRow("a", 0, 0.02))).toBe(false);
	expect(isOver(aRow("a", 0, 0.02, { calibration: strict }))).toBe(true);
});

test("silence is counted in whole days, and the future is no silence", () => {
	expect(daysSilent(aRow("a", 0, 0, { lastAt: ago(13.9) }), now)).toBe(13);
	expect(daysSilent(aRow("a", 0, 0, { lastAt: ago(-3) }), now)).toBe(0);
	expect(daysSilent(aRow("a", 0, 0, { lastAt: null }), now)).toBeNull();
	expect(needOf(aRow("a", 0, 0, { lastAt: ago(13.9) }), now)).toBe("fine");
});
