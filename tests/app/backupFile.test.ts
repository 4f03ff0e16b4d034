import { expect, test } from "vitest";
import { backupName } from "../../src/app/backupFile";
import { oneLine } from "../../src/app/oneLine";
import { hostileTexts } from "../helpers/hostileLogs";
import { hostileNames } from "../helpers/hostileNames";

test("backupName() makes a name that every system takes, of whatever a car is called", () => {
	expect(backupName("The grey one", "2026-06-01")).toBe("heeltap-the-grey-one-2026-06-01");
	expect(backupName("../..", "2026-06-01")).toBe("heeltap-car-2026-06-01");
	for (const name of [...hostileNames, ...hostileTexts, `x${"\u{10428}".repeat(50)}`]) {
		const made = backupName(name, "2026-06-01");
		expect(made).toMatch(/^heeltap-[\p{Letter}\p{Number}-]{1,40}-2026-06-01$/u);
		expect(new TextEncoder().encode(`${made}.json`).length).toBeLessThan(200);
	}
});

test("oneLine() leaves names alone, and nothing in them that would turn or break a line", () => {
	for (const name of ["Corner station", "Müller & Söhne", "\u05e9\u05dc\u05d5\u05dd", "👨‍👩‍👧‍👦"])
		expect(oneLine(name)).toBe(name);
	expect(oneLine("a\tb\nc\u202ed")).toBe("a b c d");
});
