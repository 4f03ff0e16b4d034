/** What a screen reader gets to say, and what is left to see with forced colours and without motion. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { everyScreen, show } from "./everyScreen";
import { newFolder, openPhone, type Phone } from "./harness";
import { openSite, type Site } from "./site";

const profile = newFolder();
let site: Site;
let phone: Phone;
let page: Page;

beforeAll(async () => {
	site = await openSite(inject("dist"));
	phone = await openPhone(profile.path, { serviceWorkers: "block" });
	page = phone.page;
	page.setDefaultTimeout(20_000);
	await page.goto(`${site.origin}/`);
	await page.getByRole("button", { name: /^Look around/ }).click();
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	profile.remove();
});

/** The tree of roles and names, without white space that does not break. */
async function spoken(): Promise<string> {
	const tree = (await page.locator("body").ariaSnapshot()).replaceAll(/[\u00a0\u202f]/g, " ");
	// What holds a colon is put between quotation marks.
	return tree.replaceAll(/^(\s*- )'(.*)'/gm, "$1$2");
}

const said: Readonly<Record<string, { readonly main: string; readonly parts: readonly RegExp[] }>> = {
	tank: {
		main: "Tank",
		parts: [
			/- region "Verdict":/,
			/- heading "Boost: not now" \[level=2\]/,
			/- img "Twenty equally likely [^"]*from \d+ % to \d+ %[^"]*26–34 %[^"]*"/,
			/- term: Most likely about\n\s+- definition: \d+ %/,
			/- group "Maybe too much ethanol":/,
			/- link "What to pump"/,
			/- heading "Last change" \[level=2\]/,
		],
	},
	fill: {
		main: "Fill",
		parts: [
			/- heading "Fill" \[level=2\]/,
			/- group "What are you pumping\?":/,
			/- button "Flex fuel E85 \(US\) 51–83 %" \[pressed\]/,
			/- region "What this leads to":\n\s+- figure:\n\s+- img "Twenty equally likely/,
			/- textbox "Amount, gal"/,
			/- slider "[^"]+"/,
			/- group "Keys[^"]*":|- group "[^"]*keys[^"]*":/i,
			/- button "delete the last digit"/,
		],
	},
	plan: {
		main: "What to pump",
		parts: [
			/- img "Twenty equally likely/,
			/- list:\n\s+- listitem: [\d.]+ gal of Flex fuel E85/,
			/- button "Pump this[^"]*"/,
		],
	},
	log: {
		main: "Log",
		parts: [
			/- region "Ethanol content over time":/,
			/- group "[^"]+":\n\s+- button "Last 10 stops" \[pressed\]/,
			/- img "[^"]*\d+ %[^"]*"/,
			/- table/,
			/- columnheader "9 in 10"/,
			/- link "[^"]*gal of “Gasoline E10[^"]*"/,
		],
	},
	"entry/invented-stop-18-flex": {
		main: "Entry of the log",
		parts: [
			/- link "Back to the log"/,
			/- region "What it says":\n\s+- heading "[^"]*gal of “Flex fuel E85[^"]*" \[level=2\]/,
			/- heading "What it did" \[level=2\]/,
			/- region "Put it right":/,
			/- link "Correct this stop"/,
		],
	},
};

test.each(Object.entries(said))(
	"%s says what it is, what it holds, and what can be done",
	async (address, { main, parts }) => {
		await show(page, address);
		const tree = await spoken();
		expect(tree).toContain('- banner:\n  - heading "Invented hatchback" [level=1]');
		expect(tree).toContain(`- main "${main}":`);
		expect(tree).toMatch(/- navigation "Screens":\n\s+- list:/);
		for (const part of parts) expect(tree).toMatch(part);
		// Nothing that can be pressed or filled in is without a name.
		expect(tree.match(/- (button|link|textbox|slider|combobox|checkbox|radio|img)(:|$| \[)/gm) ?? []).toEqual([]);
		// No level of heading is left out.
		const levels = [...tree.matchAll(/- heading .*\[level=(\d)\]/g)].map(([, level]) => Number(level));
		expect(levels.filter((level, i) => level > (levels[i - 1] ?? 0) + 1)).toEqual([]);
	},
);

test("what changes by itself is said: the verdict, the preview, a plan, messages and faults", async () => {
	const live = (selector: string) =>
		page
			.locator(selector)
			.first()
			.evaluate((element) => element.closest("[aria-live], [role=status], [role=alert]") !== null);
	await show(page, "tank");
	expect(await live(".verdict h2")).toBe(true);
	expect(await live(".toasts")).toBe(true);
	expect(await live(".figures")).toBe(false);
	await show(page, "fill");
	expect(await live(".preview .line")).toBe(true);
	await page.getByRole("button", { name: "Save", exact: true }).click();
	await page.getByRole("alert").waitFor();
	await show(page, "plan");
	expect(await live(".pours")).toBe(true);
});

test("a form that is refused says at each field what is wrong with it", async () => {
	for (const address of ["calibration", "setup", "measure/analyser", "measure/tube"]) {
		await show(page, address);
		await page.locator('main form button[type="submit"]').first().click();
		await page.locator('main [aria-invalid="true"]').first().waitFor();
		const unsaid = await page.evaluate(() =>
			[...document.querySelectorAll('main [aria-invalid="true"]')]
				.filter(
					(field) =>
						!(field.getAttribute("aria-describedby") ?? "")
							.split(" ")
							.some((id) => document.getElementById(id)?.matches(".fault:not(:empty)")),
				)
				.map((field) => field.outerHTML),
		);
		expect(unsaid, address).toEqual([]);
		const atFault = () => page.evaluate(() => document.activeElement?.matches("[aria-invalid=true], .fault"));
		await expect.poll(atFault, { message: address, timeout: 20_000 }).toBe(true);
	}
});

/** What moves or would move: running effects other than on whether something is seen, and what is to glide. */
async function moving(): Promise<string[]> {
	return page.evaluate(() => {
		const running = document.getAnimations().flatMap((animation) => {
			const frames = animation.effect instanceof KeyframeEffect ? animation.effect.getKeyframes() : [];
			const changed = new Set(frames.flatMap((frame) => Object.keys(frame)));
			for (const still of ["offset", "computedOffset", "easing", "composite", "visibility"]) changed.delete(still);
			return [...changed];
		});
		const gliding = [document.documentElement, ...document.querySelectorAll("body *")].filter((element) => {
			const { transitionDuration, scrollBehavior, animationDuration } = getComputedStyle(element);
			return /[1-9]/.test(`${transitionDuration} ${animationDuration}`) || scrollBehavior === "smooth";
		});
		return [...running, ...gliding.map((element) => element.getAttribute("class") ?? element.tagName)];
	});
}

test("for those who want no motion nothing moves, on any screen", { timeout: 120_000 }, async () => {
	for (const address of Object.keys(everyScreen)) {
		await show(page, address);
		expect(await moving(), address).toEqual([]);
	}
	await page.emulateMedia({ reducedMotion: "no-preference" });
	await show(page, "tank");
	expect(new Set(await moving())).toEqual(new Set(["glide"]));
	await page.emulateMedia({ reducedMotion: "reduce" });
});

test("with forced colours everything drawn, chosen or focused is told apart", async () => {
	/** The colours of what a selector finds, each once. */
	const colours = (selector: string, property: "fill" | "stroke" | "backgroundColor" | "borderTopColor" | "color") =>
		page.evaluate(
			([selector, property]) => [
				...new Set([...document.querySelectorAll(selector)].map((element) => getComputedStyle(element)[property])),
			],
			[selector, property] as const,
		);
	for (const [scheme, ground, ink] of [
		["dark", "rgb(0, 0, 0)", "rgb(255, 255, 255)"],
		["light", "rgb(255, 255, 255)", "rgb(0, 0, 0)"],
	] as const) {
		await page.emulateMedia({ forcedColors: "active", colorScheme: scheme });
		await show(page, "tank");
		expect(await colours("body", "color")).toEqual([ink]);
		expect(await colours(".dot, .dotplot text, .dotplot .band", "fill")).toEqual([ink]);
		expect(await colours(".dotplot .axis, .dotplot .bracket", "stroke")).toEqual([ink]);
		const [current, others] = [
			await colours(".tabs a[aria-current]", "borderTopColor"),
			await colours(".tabs a:not([aria-current])", "borderTopColor"),
		];
		expect(others).toEqual([ground]);
		expect(current).not.toEqual(others);
		expect(await colours(".warning .signal", "backgroundColor")).toEqual([ink]);
		expect(await colours(".warning .signal", "color")).toEqual([ground]);
		await show(page, "fill");
		const chosen = await colours('main .button[aria-pressed="true"]', "backgroundColor");
		expect(chosen).toHaveLength(1);
		expect(await colours('main .button[aria-pressed="false"]', "backgroundColor")).not.toEqual(chosen);
		expect(await colours('main .button[aria-pressed="true"]', "color")).not.toEqual(chosen);
		await page.getByRole("textbox", { name: /^Amount/ }).focus();
		expect(await page.evaluate(() => document.activeElement && getComputedStyle(document.activeElement).outline)).toBe(
			`${ink} solid 3px`,
		);
		await show(page, "log");
		expect(await colours(".history :is(.mark, .band, .corridor, text)", "fill")).toEqual([ink]);
		expect(await colours(".history :is(.median, .edge, .axis)", "stroke")).toEqual([ink]);
		await show(page, "setup");
		expect(await colours(".chip > input:checked + .face", "backgroundColor")).toEqual(chosen);
	}
	await page.emulateMedia({ forcedColors: "none", colorScheme: "light" });
	await show(page, "tank");
	expect(await colours(".dot", "fill")).not.toEqual(["rgb(0, 0, 0)"]);
});
