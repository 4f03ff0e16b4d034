import { describe, expect, test } from "vitest";
import { measureSentences, measureSummary } from "../../src/app/measureWords";
import type { Measure, Measures, Worth } from "../../src/domain/plan/worth";

const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
const sample: Measure = { kind: "pumpSample", offer: 0, product: flex };
const testAfter: Measure = { kind: "tankSample", when: "after" };

function worth(measure: Measure, narrowing: number, gain = 0): Worth {
	return { measure, narrowing, gain };
}

function measures(worths: readonly Worth[], fields: Partial<Measures> = {}): Measures {
	return { filling: true, width: 0.1, inside: 0.7, worths, ...fields };
}

const spaces = (text: string) => text.replaceAll("\u00a0", " ");
const summary = (...args: Parameters<typeof measures>) => spaces(measureSummary(measures(...args)));
const sentences = (...args: Parameters<typeof measures>) => measureSentences(measures(...args)).map(spaces);

describe("measureSummary()", () => {
	test("says the best before the fill and the best after it in one sentence", () => {
		expect(summary([worth(sample, 0.48, 0.16), worth(testAfter, 0.26), worth({ kind: "gauge" }, 0.3)])).toBe(
			"Testing this pump’s fuel before you fill would halve the doubt and raise the chance of being inside from 14 in 20 to 17 in 20; a water test of the tank afterwards would take off a quarter.",
		);
	});

	test("says only what there is", () => {
		expect(summary([worth({ kind: "analyser", when: "after" }, 0.35)])).toBe(
			"An analyser’s reading of the tank afterwards would take off a third of the doubt.",
		);
		expect(summary([worth({ kind: "gauge" }, 0.002, 0.27)], { inside: 0.08 })).toBe(
			"Noting the gauge before you fill would raise the chance of being inside from 2 in 20 to 7 in 20.",
		);
	});

	test("says so where nothing is worth the trouble", () => {
		const nothing = "Nothing that you could measure now would tell you much more.";
		expect(summary([worth(sample, 0.03, 0.01), worth({ kind: "click" }, 0.4, -0.2)])).toBe(nothing);
		expect(summary([])).toBe(nothing);
	});
});

describe("measureSentences()", () => {
	test("names the product where more than one pump can be tested", () => {
		const [first] = sentences([worth(sample, 0.5, 0), worth({ kind: "pumpSample", offer: 1, product: e10 }, 0)]);
		expect(first).toBe("Testing the “Flex fuel E85 (US)” of this pump before you fill would halve the doubt.");
	});

	test("speaks of no fill where none is planned", () => {
		const tank: Measure = { kind: "tankSample", when: "before" };
		const trim: Measure = { kind: "trim", when: "before", calibratedFor: 0.3 as never };
		const found = sentences([worth(tank, 0.66), worth({ kind: "gauge" }, 0.09), worth(trim, 0.17)], { filling: false });
		expect(found).toEqual([
			"A water test of the tank would take off two thirds of the doubt.",
			"Noting the gauge would take off a tenth of the doubt.",
			"The fuel trims, read now, would take off a fifth of the doubt.",
		]);
	});

	test("gives every size of narrowing its name", () => {
		const narrowings = [0.05, 0.14, 0.21, 0.26, 0.4, 0.43, 0.6, 0.74, 0.85, 0.99];
		const found = sentences(narrowings.map((narrowing) => worth(testAfter, narrowing)));
		expect(found.map((sentence) => /would (.*) the doubt/.exec(sentence)?.[1])).toEqual([
			"take off a tenth of",
			"take off a tenth of",
			"take off a fifth of",
			"take off a quarter of",
			"take off a third of",
			"halve",
			"take off two thirds of",
			"take off three quarters of",
			"take off nearly all of",
			"take off nearly all of",
		]);
	});

	test("says of a rise that twenty dots do not show that it is little", () => {
		expect(sentences([worth({ kind: "click" }, 0.1, 0.026)], { inside: 0.68 })).toEqual([
			"Filling to the click instead would take off a tenth of the doubt and raise the chance of being inside a little.",
		]);
	});

	test("says nothing of the chance where no window is known", () => {
		expect(sentences([worth(testAfter, 0.5)], { inside: null })).toEqual([
			"A water test of the tank afterwards would halve the doubt.",
		]);
	});
});
