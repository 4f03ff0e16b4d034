import { expect, test } from "vitest";
import { outlookWords } from "../../src/app/components/AmountOutlook";
import { litres } from "../../src/domain/quantity";

const budgets = { lean: 0.05, knock: 0.05 };
const none = [0, 0, 0, 0, 0];
/** Chances after 0, 10, 20, 30 and 40 L, all of which go in. */
const said = (above: number[], below: number[]) =>
	outlookWords({ step: litres(10), fits: none.map(() => 1), above, below }, budgets, "L").replaceAll("\u00a0", " ");

test("between which amounts the blend is inside, and from where it is past the lean limit", () => {
	expect(said([0, 0, 0, 0.2, 0.9], [1, 0.01, 0.01, 0, 0])).toBe(
		"Inside the window: 10.0–20.0 L of this. Past the lean limit from 30.0 L.",
	);
});

test("where none is inside, what comes nearest", () => {
	expect(said(none, [1, 0.5, 0.2, 0.3, 0.4])).toBe(
		"No amount brings it inside as surely as asked; the best is 20.0 L of this, inside: 16 in 20.",
	);
});

test("a tank that is too lean now is so until enough is in, or with any amount", () => {
	expect(said([0.9, 0.5, 0.2, 0, 0], none)).toBe(
		"Inside the window: 30.0–40.0 L of this. Past the lean limit until 20.0 L of this are in.",
	);
	expect(said([0.9, 0.8, 0.7, 0.6, 0.5], none)).toMatch(/Past the lean limit with any amount of this\.$/);
});
