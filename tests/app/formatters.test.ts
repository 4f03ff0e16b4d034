import { describe, expect, test } from "vitest";
import { dates, numbers } from "../../src/app/formatters";
import { locale } from "../../src/app/words/language";

describe("numbers() writes what Intl writes", () => {
	const many = [
		...Array(1002).keys(),
		-1,
		-12,
		0.04,
		0.1 + 0.2,
		0.5,
		1.005,
		7.25,
		12.345,
		20.1,
		99.95,
		999.9,
		1234.5,
		1e6,
	];
	const tags = ["en", "en-US", "en-GB", "en-ZA", "de", "de-DE", "de-AT", "de-CH", "ar-EG"];
	const options = [
		{},
		{ maximumFractionDigits: 0 },
		{ maximumFractionDigits: 3 },
		{ minimumFractionDigits: 1, maximumFractionDigits: 1 },
		{ minimumFractionDigits: 1 },
		{ minimumFractionDigits: 2, maximumFractionDigits: 2 },
		{ maximumFractionDigits: 9 },
		{ maximumSignificantDigits: 2 },
	];
	test.each(tags)("in %s", (tag) => {
		for (const one of options) {
			const intl = new Intl.NumberFormat(tag, one);
			for (const value of many) expect(numbers(one, tag).format(value)).toBe(intl.format(value));
		}
	});

	test("but for the sign of a zero", () => {
		expect(numbers({ maximumFractionDigits: 0 }).format(-0)).toBe("0");
	});
});

test("dates() writes what Intl writes, and is made at its first use", () => {
	const options = { dateStyle: "medium" } as const;
	const made = dates(options);
	const instant = Date.UTC(2026, 5, 1, 12);
	expect(made.format(instant)).toBe(new Intl.DateTimeFormat(locale, options).format(instant));
	expect(made.format(new Date(instant))).toBe(made.format(instant));
});
