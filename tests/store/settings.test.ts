import { expect, test } from "vitest";
import { withChanges } from "../../src/store/settings";
import { carSchema } from "../../src/store/wire";
import { aCar } from "../helpers/logs";

test("a setting changed after one of a clock far ahead is stamped later still, but never beyond what a log may name", () => {
	const renamed = (changed: string) =>
		withChanges(aCar({ changed: { name: changed } }), aCar({ name: "Renamed" }), "2026-06-10T12:00:00Z");
	expect(renamed("2030-01-01T00:00:00Z").changed?.name).toBe("2030-01-01T00:00:01.000Z");
	const last = renamed("2200-12-31T23:59:59Z");
	expect(last.changed?.name).toBe("2200-12-31T23:59:59.000Z");
	expect(carSchema.safeParse(last).success).toBe(true);
});
