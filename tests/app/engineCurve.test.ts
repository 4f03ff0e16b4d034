import { describe, expect, test } from "vitest";
import { type BlendProperty, propertyGroups, spanOf } from "../../src/app/screens/engine/blendProperty";
import { curveOf } from "../../src/app/screens/engine/curve";
import { fraction } from "../../src/domain/quantity";

const groups = propertyGroups(fraction(0.3), 0.8);
const all = groups.flatMap(({ properties }) => properties);
const named = (id: string): BlendProperty => {
	const found = all.find((property) => property.id === id);
	if (!found) throw new Error(`no property ${id}`);
	return found;
};
const points = (path: string) =>
	[...path.matchAll(/(-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));

describe("propertyGroups()", () => {
	test("holds what hangs on a calibration at nothing, or at what is commanded, for its own content", () => {
		const own = fraction(0.3);
		expect(named("lambda").of(own)).toBeCloseTo(0.8, 12);
		for (const id of ["injectors", "pump", "trim"]) expect(named(id).of(own)).toBeCloseTo(0, 12);
	});

	test("leaves it out where there is none", () => {
		const ids = propertyGroups(null, 1).flatMap(({ properties }) => properties.map(({ id }) => id));
		expect(ids).toHaveLength(all.length - 4);
		expect(ids).not.toContain("lambda");
	});

	test("has the usual gasoline between the unlike ones, or on one of them", () => {
		for (const { id, of, unlike } of all) {
			if (!unlike) continue;
			for (const content of [0.1, 0.5, 0.9].map(fraction)) {
				const [one, other] = unlike.map((base) => of(content, base));
				const usual = of(content);
				expect(usual, id).toBeGreaterThanOrEqual(Math.min(one, other));
				expect(usual, id).toBeLessThanOrEqual(Math.max(one, other));
				expect(one, id).not.toBe(other);
			}
		}
	});
});

describe("spanOf()", () => {
	test("ends where a property without a peak does", () => {
		const trim = named("trim");
		expect(spanOf(trim, fraction(0.2), fraction(0.4))).toEqual([trim.of(fraction(0.2)), trim.of(fraction(0.4))]);
		const ratio = named("airFuelRatio");
		expect(spanOf(ratio, fraction(0.2), fraction(0.4))).toEqual([ratio.of(fraction(0.4)), ratio.of(fraction(0.2))]);
	});

	test("finds a peak in between: a little ethanol raises the vapour pressure", () => {
		const pressure = named("vapourPressure");
		const [, most] = spanOf(pressure, fraction(0), fraction(0.3));
		expect(most).toBeGreaterThan(pressure.of(fraction(0)) + 4);
		expect(most).toBeGreaterThan(pressure.of(fraction(0.3)) + 1);
	});
});

describe("curveOf()", () => {
	test("stays inside the drawing, and runs from left to right", () => {
		for (const property of all) {
			const { line, shade } = curveOf(property);
			for (const { x, y } of [...points(line), ...points(shade ?? "")]) {
				expect(x).toBeGreaterThanOrEqual(0);
				expect(x).toBeLessThanOrEqual(100);
				expect(y).toBeGreaterThanOrEqual(4);
				expect(y).toBeLessThanOrEqual(36);
			}
			const xs = points(line).map(({ x }) => x);
			expect(xs).toEqual([...xs].sort((a, b) => a - b));
			expect([xs[0], xs[xs.length - 1]]).toEqual([0, 100]);
		}
	});

	test("draws more higher up, and fills the height", () => {
		const ys = points(curveOf(named("trim")).line).map(({ y }) => y);
		expect(ys[0]).toBe(36);
		expect(ys[ys.length - 1]).toBe(4);
		for (let i = 1; i < ys.length; i++) expect(ys[i]).toBeLessThan(ys[i - 1]);
	});

	test("puts a part and a point where the line is", () => {
		const curve = curveOf(named("ron"));
		const part = points(curve.part(0.284, 0.318));
		expect(part.map(({ x }) => x)).toEqual([28.4, 29, 30, 31, 31.8]);
		const [, y] = curve.point(0.3);
		expect(part[2].y).toBeCloseTo(y, 1);
		expect(points(curve.line)[30].y).toBe(part[2].y);
	});
});
