import { expect, test } from "vitest";
import { catalogue, labelledRange } from "../../src/domain/catalogue";

test.each([
	// model.md, table of product ranges.
	["flex-51-83", 0.51, 0.83],
	["gasoline-e10", 0.09, 0.1],
	["gasoline-to-10", 0, 0.1],
	["gasoline-e0", 0, 0.008],
	["gasoline-e5", 0, 0.05],
	["gasoline-e15", 0.1, 0.15],
	["gasoline-e20", 0.1, 0.2],
	["flex-e85-eu", 0.5, 0.85],
	["flex-e85-au", 0.7, 0.85],
	["gasoline-c", 0.29, 0.31],
	["ethanol-e98", 0.921, 0.98],
])("%s holds %f to %f", (id, low, high) => {
	expect(catalogue.find((product) => product.id === id)?.range).toEqual([low, high]);
});

test.each([30, 40, 50, 60, 70, 80])("flex-%i holds five points either way", (percent) => {
	const range = catalogue.find(({ id }) => id === `flex-${percent}`)?.range;
	expect(range?.[0]).toBeCloseTo(percent / 100 - 0.05, 12);
	expect(range?.[1]).toBeCloseTo(percent / 100 + 0.05, 12);
	expect(labelledRange(percent)).toEqual([expect.closeTo(range![0], 12), expect.closeTo(range![1], 12)]);
});

test("labelledRange(percent) stays within 0 to 1", () => {
	expect(labelledRange(3)[0]).toBe(0);
	expect(labelledRange(98)[1]).toBe(1);
});

test("Every product has an id of its own and a source", () => {
	expect(new Set(catalogue.map(({ id }) => id)).size).toBe(catalogue.length);
	for (const { source } of catalogue) expect(source).not.toBe("");
});
