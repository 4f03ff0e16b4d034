import { expect, test } from "vitest";
import { study } from "./study";

const { thumb, planned, measured } = study({ cars: 6, stops: 10, aged: true });

test("plans of fixed amounts, poured as planned, never exceed the lean budget in the account", () => {
	for (const { fixed, fixedOver } of [planned, measured]) {
		expect(fixed).toBeGreaterThan(15);
		expect(fixedOver).toBe(0);
	}
});

test("the search finds what trying every plan finds, at every stop", () => {
	expect([planned.searched, planned.sameAsBruteForce]).toEqual([60, 60]);
});

test("who follows the plan ends inside the window oftener than by the rule of thumb, and oftener yet who measures", () => {
	expect(planned.inside).toBeGreaterThan(1.5 * thumb.inside);
	expect(measured.inside).toBeGreaterThan(planned.inside);
});

test("who follows the plan is hardly oftener too lean than the plans say", () => {
	for (const { stops, above } of [planned, measured]) expect(above / stops).toBeLessThan(0.1);
});
