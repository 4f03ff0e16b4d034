import { expect, test } from "vitest";
import type { Estimate } from "../../src/domain/estimator/estimate";
import { usualBudget, verdictOf, warningsFor } from "../../src/domain/warnings";
import { aCalibration } from "../helpers/logs";

const chances = (below: number | null, above: number | null) => ({ below, above }) as Estimate;
const codes = (below: number, above: number, calibration = aCalibration()) =>
	warningsFor(chances(below, above), calibration, null).map((warning) => warning.code);

test("The usual budget is one in twenty", () => {
	expect(usualBudget).toBe(0.05);
});

test("warningsFor(…) is silent while both chances keep to the budget, just up to it", () => {
	expect(codes(0.05, 0.05)).toEqual([]);
	expect(codes(0.051, 0.049)).toEqual(["knock"]);
	expect(codes(0.049, 0.051)).toEqual(["lean"]);
	expect(codes(0.06, 0.06)).toEqual(["lean", "knock"]);
});

test("warningsFor(…) goes by the calibration's own budgets, side by side", () => {
	const careful = aCalibration({ leanBudget: 0.01, knockBudget: 0.3 });
	expect(warningsFor(chances(0.2, 0.02), careful, null)).toMatchObject([{ code: "lean", alone: true }]);
	expect(warningsFor(chances(0.4, 0.02), careful, null)).toEqual([
		{ code: "lean", severity: "possible", chance: 0.02, budget: 0.01, alone: false },
		{ code: "knock", severity: "possible", chance: 0.4, budget: 0.3, alone: false },
	]);
});

test("warningsFor(…) calls a side likely once it is more likely than not, and names that side first", () => {
	expect(warningsFor(chances(0.5, 0.06), aCalibration(), null).map((w) => "severity" in w && w.severity)).toEqual([
		"possible",
		"possible",
	]);
	expect(codes(0.51, 0.06)).toEqual(["knock", "lean"]);
	expect(codes(0.06, 0.51)).toEqual(["lean", "knock"]);
});

test("warningsFor(…) warns of neither side where no window is known", () => {
	expect(warningsFor(chances(null, null), null, null)).toEqual([]);
});

test("warningsFor(…) passes on what the last entry said against the account", () => {
	const calm = chances(0, 0);
	expect(warningsFor(calm, aCalibration(), { kind: "disagrees", chance: 0.003 })).toEqual([
		{ code: "disagrees", chance: 0.003 },
	]);
	expect(warningsFor(calm, null, { kind: "impossibleLevel" })).toEqual([{ code: "impossibleLevel" }]);
	expect(warningsFor(calm, null, { kind: "impossibleDistance" })).toEqual([{ code: "impossibleDistance" }]);
});

test.each([
	[0, 0, "yes"],
	[0.05, 0.05, "yes"],
	[0.06, 0, "unsure"],
	[0, 0.06, "unsure"],
	[0.2, 0.3, "unsure"],
	[0.26, 0.26, "no"],
	[0, 0.51, "no"],
	[0.51, 0, "no"],
] as const)("verdictOf(…) with %f below and %f above is %s", (below, above, verdict) => {
	expect(verdictOf(chances(below, above), aCalibration())).toBe(verdict);
});

test("verdictOf(…) never says yes past a budget, and never no where inside is likelier than not", () => {
	const generous = aCalibration({ leanBudget: 0.6, knockBudget: 0.4 });
	for (let below = 0; below <= 1; below += 0.05) {
		for (let above = 0; above <= 1 - below; above += 0.05) {
			const usual = verdictOf(chances(below, above), aCalibration());
			if (below > 0.05 || above > 0.05) expect(usual).not.toBe("yes");
			if (below + above <= 0.5) expect(usual).not.toBe("no");
			// Even a budget above one half does not make a likely breach a yes.
			if (above > 0.5) expect(verdictOf(chances(below, above), generous)).toBe("no");
		}
	}
});

test("verdictOf(…) has no window without a calibration, or without an account of it", () => {
	expect(verdictOf(chances(0, 0), null)).toBe("noWindow");
	expect(verdictOf(chances(null, null), aCalibration())).toBe("noWindow");
});
