/** Every screen by the rules of WCAG 2.2 AA, Tank and Fill by those of contrast at AAA, and what readers may ask of a page. */
import axeCore from "axe-core";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { words } from "../../src/app/words/en/screens";
import { everyScreen, show } from "./everyScreen";
import { newFolder, openPhone, type Phone } from "./harness";
import { openSite, type Site } from "./site";
import { turnWords, whatIsLost } from "./whatIsLost";

const profile = newFolder();
let site: Site;
let phone: Phone;
let page: Page;

beforeAll(async () => {
	site = await openSite(inject("dist"));
	phone = await openPhone(profile.path, { serviceWorkers: "block" });
	page = phone.page;
	page.setDefaultTimeout(60_000);
	await page.goto(`${site.origin}/`);
	await page.getByRole("button", { name: /^Look around/ }).click();
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
	// Sent over the debugging protocol, which the page's policy does not bind.
	await page.evaluate(axeCore.source);
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	profile.remove();
});

const lights = ["light", "dark", "sun"] as const;
const standard = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];
/** What the light changes: colours, and by its heavier letters sizes. */
const byLight = ["color-contrast", "link-in-text-block", "target-size"];

/** Breaches on the screen as it stands, by all rules in the light and by what changes in the other themes. */
async function breaches(enhanced: boolean): Promise<string[]> {
	const found: string[] = [];
	for (const light of lights) {
		const rules = enhanced ? [...byLight, "color-contrast-enhanced"] : byLight;
		found.push(
			...(await inLight(light, light === "light" ? standard : [], rules)).map((breach) => `${light}: ${breach}`),
		);
	}
	return found;
}

function inLight(light: string, tags: readonly string[], rules: readonly string[]): Promise<string[]> {
	return page.evaluate(
		async ([light, tags, rules]) => {
			document.documentElement.dataset.theme = light;
			const { axe } = window as unknown as { axe: typeof axeCore };
			const enabled = Object.fromEntries(rules.map((rule) => [rule, { enabled: true }]));
			const asked: axeCore.RunOptions =
				tags.length > 0
					? { runOnly: { type: "tag", values: [...tags] }, rules: enabled }
					: { runOnly: { type: "rule", values: [...rules] } };
			const { violations } = await axe.run({ ...asked, resultTypes: ["violations"] });
			return violations.map(({ id, nodes }) => `${id} at ${nodes.map(({ target }) => target.join(" ")).join(", ")}`);
		},
		[light, tags, rules] as const,
	);
}

/** Contrasts of what axe exempts: the letters of what is disabled, and drawn ones. */
function exempted(): Promise<string[]> {
	return page.evaluate(() => {
		const light = (colour: string) => {
			const linear = (colour.match(/[\d.]+/g) ?? []).slice(0, 3).map((part) => {
				const v = Number(part) / 255;
				return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
			});
			return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
		};
		const groundOf = (element: Element | null): string => {
			if (!element) return "rgb(255, 255, 255)";
			const { backgroundColor } = getComputedStyle(element);
			return backgroundColor === "rgba(0, 0, 0, 0)" ? groundOf(element.parentElement) : backgroundColor;
		};
		const letters = [...document.querySelectorAll('main :is(:disabled, [aria-disabled="true"], svg text)')];
		return letters.flatMap((element) => {
			const style = getComputedStyle(element);
			const [dark, bright] = [
				light(element instanceof SVGElement ? style.fill : style.color),
				light(groundOf(element)),
			].sort();
			const ratio = (Math.max(dark, bright) + 0.05) / (Math.min(dark, bright) + 0.05);
			return ratio < 7 ? [`${element.textContent}: ${ratio.toFixed(1)}`] : [];
		});
	});
}

test("no screen is left out", () => {
	const swept = new Set(Object.keys(everyScreen).map((address) => address.split("/")[0]));
	expect([...swept].sort()).toEqual(Object.keys(words).sort());
});

test("every screen keeps to WCAG 2.2 AA in every light", { timeout: 300_000 }, async () => {
	const found: string[] = [];
	for (const address of Object.keys(everyScreen)) {
		await show(page, address);
		found.push(...(await breaches(false)).map((breach) => `${address}: ${breach}`));
	}
	expect(found).toEqual([]);
});

test("a breach would have been found", async () => {
	await show(page, "tank");
	await page.evaluate(() => {
		const small = Object.assign(document.createElement("button"), { textContent: "x", className: "tiny" });
		const pale = Object.assign(document.createElement("p"), { textContent: "pale words", className: "pale" });
		small.style.cssText = "position: absolute; top: 200px; left: 40px; width: 12px; height: 12px; padding: 0";
		const beside = small.cloneNode(true) as HTMLElement;
		beside.style.left = "54px";
		pale.style.cssText = "color: #667; background: #fff";
		document.querySelector("main")?.append(small, beside, pale, Object.assign(document.createElement("input")));
	});
	const found = (await breaches(true)).join("\n");
	for (const breach of [/light: target-size/, /light: label/, /sun: color-contrast-enhanced at .pale/])
		expect(found).toMatch(breach);
	expect(found).not.toMatch(/color-contrast at/);
	await page.reload();
	await page.evaluate(axeCore.source);
});

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });

test("Tank and Fill hold a contrast of 7:1 in every light, with whatever they show", { timeout: 300_000 }, async () => {
	const found: string[] = [];
	async function look(at: string): Promise<void> {
		for (const breach of await breaches(true)) found.push(`${at}: ${breach}`);
		for (const light of lights) {
			await page.evaluate((chosen) => {
				document.documentElement.dataset.theme = chosen;
			}, light);
			for (const pale of await exempted()) found.push(`${at}, ${light}: ${pale}`);
		}
	}
	await show(page, "tank");
	await look("a warning");
	await show(page, "fill");
	await button("Another fuel").click();
	await button("Save").click();
	await page.getByRole("alert").waitFor();
	await look("everything to choose, and a fault");
	await button("Another fuel").click();
	for (const key of ["9", "9", "9"]) await button(key).click();
	await look("too large an amount");
	for (const _ of [1, 2]) await button("delete the last digit").click();
	await button("Filled to the first click?").click();
	await page.getByText(/^After 9.gal/).waitFor();
	await look("an amount to the click");
	await button("Save 9 gal").click();
	await page.getByRole("dialog").waitFor();
	await look("the question about the lean limit");
	await button("Save it, it is in the tank").click();
	await page.getByRole("alert", { name: /^Too much ethanol/ }).waitFor();
	await page.locator(".toast").waitFor();
	await look("a strong warning and a message");
	await button("Undo").click();
	await page.getByRole("alert", { name: /^Too much ethanol/ }).waitFor({ state: "hidden" });
	expect(found).toEqual([]);
});

/** Lays a sheet over the page's own, as readers do. */
async function withSheet(text: string): Promise<void> {
	await page.evaluate(async (rules) => {
		const sheet = new CSSStyleSheet();
		sheet.replaceSync(rules);
		document.adoptedStyleSheets = [sheet];
		for (let frame = 0; frame < 2; frame++) await new Promise((drawn) => requestAnimationFrame(drawn));
	}, text);
}

const width = 320;
/** Drawings keep their letters apart; what they say stands beside them in words. */
const spaced = `body *:not(svg, svg *) { line-height: 1.5 !important; letter-spacing: 0.12em !important;
	word-spacing: 0.16em !important } p { margin-bottom: 2em !important }
	svg { letter-spacing: normal !important; word-spacing: normal !important }`;

test("nothing is lost at 320 px with letters of twice the size, wider spacing, or long words from right to left", {
	timeout: 300_000,
}, async () => {
	await page.setViewportSize({ width, height: 640 });
	const found: string[] = [];
	const look = async (at: string) => {
		for (const lost of await page.evaluate(whatIsLost, width)) found.push(`${at}: ${lost}`);
	};
	for (const address of Object.keys(everyScreen)) {
		await show(page, address);
		await withSheet("html { font-size: 200% !important }");
		await look(`${address}, large`);
		await withSheet(spaced);
		await look(`${address}, spaced`);
		await withSheet("");
		await page.evaluate(turnWords);
		await look(`${address}, right to left`);
		found.push(...(await page.evaluate(turnedNumbers)).map((text) => `${address}: ${text}`));
		await page.evaluate(() => {
			document.documentElement.dir = "ltr";
		});
	}
	expect(found).toEqual([]);
	await page.reload();
});

/** Runs in the page: ranges and scales whose numbers stand in the wrong order. */
function turnedNumbers(): string[] {
	const places = (text: Node, parts: RegExp) =>
		[...(text.textContent ?? "").matchAll(parts)].map(({ index, 0: found }) => {
			const range = document.createRange();
			range.setStart(text, index);
			range.setEnd(text, index + found.length);
			return range.getBoundingClientRect();
		});
	const alone = [...document.querySelectorAll("main :is(.number, .nowrap, .figure, td, dd, text, strong)")]
		.flatMap((element) => [...element.childNodes])
		.filter(
			(node) =>
				node instanceof Text &&
				!/\p{Letter}/u.test(node.parentElement?.textContent ?? "") &&
				/^[\s\d.,]+[–−-][\d.,]+\s?%?$/.test(node.textContent ?? ""),
		);
	const ranges = alone.filter((text) => {
		const [low, high] = places(text, /[\d.,]+/g);
		return low && high && low.top === high.top && low.left > high.left;
	});
	const keys = [...document.querySelectorAll<HTMLElement>(".keypad .key")].slice(0, 3);
	const scale = [...document.querySelectorAll<HTMLElement>(".gauge .scale > span")].slice(1, 4);
	const rows = [keys, scale].filter((row) => row.some((cell, i) => i > 0 && cell.offsetLeft < row[i - 1].offsetLeft));
	return [
		...ranges.map(({ textContent }) => `turned: ${textContent}`),
		...rows.map((row) => `turned: ${row.map(({ textContent }) => textContent).join(" ")}`),
	];
}

test("what is lost would have been found", async () => {
	await show(page, "tank");
	await page.evaluate(() => {
		for (const style of [
			"width: 500px",
			"width: 40px; height: 20px; overflow: hidden; white-space: nowrap",
			"margin-top: -40px",
		]) {
			const made = Object.assign(document.createElement("p"), {
				textContent: "words that are lost somewhere and found nowhere",
			});
			made.style.cssText = style;
			document.querySelector("main")?.append(made);
		}
		document.documentElement.dir = "rtl";
		document
			.querySelector(".figures dd")
			?.replaceWith(
				Object.assign(document.createElement("bdi"), { className: "number", dir: "rtl", textContent: "29–35 %" }),
			);
		for (const made of document.querySelectorAll<HTMLElement>("bdi.number")) made.style.unicodeBidi = "isolate";
	});
	const found = (await page.evaluate(whatIsLost, width)).join("\n");
	for (const loss of [/beyond the phone/, /cut off/, /lies on/]) expect(found).toMatch(loss);
	expect(await page.evaluate(turnedNumbers)).toEqual(["turned: 29–35 %"]);
	await page.reload();
});
