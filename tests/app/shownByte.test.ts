import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readShown, type Scale, signedPercent } from "../../src/app/shownByte";
import { ethanolOfByte, trimOfByte } from "../../src/domain/readings/obd";

const content: Scale = {
	pids: ["52"],
	ofByte: ethanolOfByte,
	least: 0,
	most: 1,
	example: { percent: "30.2", byte: "4D" },
};
const trim: Scale = {
	pids: ["06", "07"],
	ofByte: trimOfByte,
	least: -1,
	most: 127 / 128,
	example: { percent: "-3.1", byte: "7C" },
};
const spaces = (text: string) => text.replaceAll("\u00a0", " ");

describe("readShown()", () => {
	test("takes percentages with comma, point, sign and percent sign", () => {
		for (const typed of ["-3.1", "−3,1", " -3.1 %", "–3.1%"]) {
			const read = readShown(typed, "percent", trim);
			expect(read.ok && read.value.value).toBeCloseTo(-0.031, 12);
		}
		expect(readShown("+4.7", "percent", trim)).toMatchObject({ ok: true, value: { understood: null, inHex: null } });
	});

	test("gives back what a tool would show of any byte, in either way", () => {
		fc.assert(
			fc.property(fc.nat(255), (byte) => {
				const [asByte, asPercent] = [
					readShown(`0x${byte.toString(16)}`, "byte", trim),
					readShown(((byte - 128) / 1.28).toFixed(1), "percent", trim),
				];
				const apart = asByte.ok && asPercent.ok ? Math.abs(asByte.value.value - asPercent.value.value) : 9;
				// Shown to a tenth of a percent.
				expect(apart).toBeLessThanOrEqual(0.0005 + 1e-9);
			}),
		);
	});

	test("says what is wrong and how to mend it", () => {
		const fault = (typed: string, as: "percent" | "byte", scale: Scale) => {
			const read = readShown(typed, as, scale);
			return read.ok ? "" : spaces(read.error);
		};
		expect(fault("", "percent", content)).toBe("Type what the tool shows, such as 30.2.");
		expect(fault("4D", "percent", content)).toMatch(/at most one comma or point.+ choose “Raw byte” above\.$/);
		expect(fault("-1", "percent", content)).toMatch(/^It must lie between 0 % and \+100 %/);
		expect(fault("130", "percent", trim)).toMatch(/^It must lie between −100 % and \+99\.2 %/);
		expect(fault("", "byte", content)).toBe("Type the byte that the tool shows, such as 4D.");
		expect(fault("30.2", "byte", content)).toMatch(/^A byte has digits and the letters A to F.+“Percent” above\.$/);
		expect(fault("256", "byte", content)).toMatch(/^A byte goes from 0 to 255/);
		expect(fault("41 2F 80", "byte", content)).toMatch(/^This response is not one of PID 52: it would hold 41 52/);
	});
});

test("signedPercent() shows the sign, and none of nothing", () => {
	expect([0.031, -0.031, 0, -0.0001].map(signedPercent).map(spaces)).toEqual(["+3.1 %", "−3.1 %", "0 %", "0 %"]);
});
