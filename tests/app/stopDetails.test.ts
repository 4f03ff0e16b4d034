import { expect, test } from "vitest";
import { draftOf, inUnit } from "../../src/app/fillDraft";
import { detailsFault, odometerIn, priceIn, readOdometer, readPrice } from "../../src/app/stopDetails";
import { aFill } from "../helpers/logs";

test("an odometer is read in km, and in miles where fuel is counted in gallons", () => {
	expect(readOdometer("84210", "L")).toEqual({ ok: true, value: 84210 });
	expect(readOdometer("52000", "gal")).toEqual({ ok: true, value: 52000 * 1.609344 });
	expect(readOdometer(" ", "L")).toEqual({ ok: true, value: null });
	expect(readOdometer("84.210.5", "L")).toMatchObject({ ok: false, error: /digits/ });
	expect(readOdometer("9000000", "L")).toMatchObject({ ok: false, error: /between 0 and 5000000\skm/ });
	expect(readOdometer("4000000", "imp gal")).toMatchObject({ ok: false, error: /mi/ });
});

test("a price is read per litre or gallon, and must be more than nothing", () => {
	expect(readPrice("1,799", "L")).toEqual({ ok: true, value: 1.799 });
	expect(readPrice("3.459", "gal")).toEqual({ ok: true, value: 3.459 / 3.785411784 });
	expect(readPrice("", "gal")).toEqual({ ok: true, value: null });
	expect(readPrice("0", "L")).toMatchObject({ ok: false });
	expect(readPrice("free", "L")).toMatchObject({ ok: false });
});

test("in another unit they stay the same, and what is no number stays as typed", () => {
	expect(odometerIn("1000", "L", "gal")).toBe("621.4");
	expect(odometerIn("1000", "gal", "imp gal")).toBe("1000");
	expect(Number(priceIn("1.5", "L", "gal"))).toBeCloseTo(1.5 * 3.785411784, 3);
	expect(priceIn("x", "L", "gal")).toBe("x");
});

test("a stop that is corrected brings its odometer and prices back, in any unit", () => {
	const fills = [
		aFill({ id: "a", odometerKm: 84210, pricePerLitre: 0.899 }),
		aFill({ id: "b", pricePerLitre: 1.749 }),
		aFill({ id: "c" }),
	];
	const draft = draftOf(fills, "L", () => "id");
	expect(draft.odometer).toBe("84210");
	expect(draft.pours.map(({ price }) => price)).toEqual(["0.899", "1.749", ""]);
	expect(inUnit(draft, "gal")).toMatchObject({ odometer: "52325.7", pours: [{ price: "3.4031" }, {}, { price: "" }] });
});

test("a fault in either is a fault of the stop", () => {
	const pours = [{ price: "" }, { price: "1.7" }];
	expect(detailsFault({ odometer: "", pours }, "L")).toBe(false);
	expect(detailsFault({ odometer: "x", pours }, "L")).toBe(true);
	expect(detailsFault({ odometer: "", pours: [...pours, { price: "-1" }] }, "L")).toBe(true);
});
