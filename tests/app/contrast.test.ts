/** Contrast of every text colour on its ground, by WCAG 2.2 (relative luminance and contrast ratio as defined there). */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

const css = readFileSync(join(import.meta.dirname, "../../src/app/styles/tokens.css"), "utf8");

function tokens(selector: string): Record<string, string> {
	const block = css.slice(css.indexOf(`${selector} {`)).split("}")[0];
	return Object.fromEntries(
		[...block.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name, value]) => [name, value]),
	);
}

function luminance(hex: string): number {
	const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16) / 255);
	const linear = (v: number) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);
	return 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
}

function contrast(a: string, b: string): number {
	const [dark, light] = [luminance(a), luminance(b)].sort((x, y) => x - y);
	return (light + 0.05) / (dark + 0.05);
}

const light = tokens(":root");
const themes = {
	light,
	dark: { ...light, ...tokens(':root[data-theme="dark"]') },
	"dark by the phone": { ...light, ...tokens(':root[data-theme="auto"]') },
	sun: { ...light, ...tokens(':root[data-theme="sun"]') },
};

const pairs = [
	["ink", "ground"],
	["ink", "card"],
	["soft", "ground"],
	["soft", "card"],
	["on-accent", "accent"],
	["on-strong", "strong"],
	["notice-ink", "notice"],
] as const;

describe.each(Object.entries(themes))("in %s", (_name, colours) => {
	test.each(pairs)("%s on %s holds 7:1", (ink, ground) => {
		expect(contrast(colours[ink], colours[ground])).toBeGreaterThanOrEqual(7);
	});
	test.each(["inside", "above", "below"])("dots %s hold 3:1 on card and ground", (dot) => {
		expect(contrast(colours[dot], colours.ground)).toBeGreaterThanOrEqual(3);
	});
});

test("in the sun the verdict is black on light at 15:1 or more", () => {
	expect(contrast(themes.sun.ink, themes.sun.card)).toBeGreaterThanOrEqual(15);
});

test("the phone's own dark is the dark theme", () => {
	expect(themes["dark by the phone"]).toEqual(themes.dark);
});
