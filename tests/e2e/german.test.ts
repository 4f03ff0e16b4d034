/** German, on the narrowest phone with the largest letters: chosen in the app, offline, and nothing wider than the screen. */
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { axe, newFolder, openPhone, type Phone, untilOffline } from "./harness";
import { openSite, type Site } from "./site";

const profile = newFolder();
let site: Site;
let phone: Phone;
let page: Page;

beforeAll(async () => {
	site = await openSite(inject("dist"));
	phone = await openPhone(profile.path);
	page = phone.page;
	await page.setViewportSize({ width: 320, height: 700 });
	await page.goto(`${site.origin}/`);
	await page.getByRole("button", { name: /^Look around/ }).click();
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
	await untilOffline(page);
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	profile.remove();
});

const language = () => page.evaluate(() => document.documentElement.lang);
const verdict = () => page.getByRole("heading", { name: /^Ladedruck/ });

test("German is chosen under Car, without a network, and what is half typed stays", async () => {
	await page.goto(`${site.origin}/#/fill`);
	await page.getByRole("button", { name: "7", exact: true }).click();
	expect(await language()).toBe("en");
	await site.stop();
	await page.goto(`${site.origin}/#/car`);
	await page.getByRole("radio", { name: "Deutsch" }).click();
	await page.getByRole("heading", { name: "Dieses Auto", exact: true }).waitFor();
	expect(await language()).toBe("de");
	await page.getByRole("link", { name: "Tanken", exact: true }).click();
	const amount = page.getByRole("textbox", { name: /^Menge/ });
	await amount.waitFor();
	expect(await amount.inputValue()).toBe("7");
	await site.start();
});

test("with letters of twice the size no screen is wider than 320 px", async () => {
	await page.addInitScript(() =>
		document.addEventListener("DOMContentLoaded", () => {
			document.documentElement.style.fontSize = "200%";
		}),
	);
	const wide: string[] = [];
	for (const screen of ["tank", "fill", "plan", "log", "car", "measure"]) {
		// By way of nothing, so that each begins anew.
		await page.goto("about:blank");
		await page.goto(`${site.origin}/#/${screen}`);
		await page.locator(":is(main h2, main summary):visible").first().waitFor();
		await page.locator("main .soft.late, main p:text-is('…')").first().waitFor({ state: "hidden" });
		await page.evaluate(() => {
			for (const fold of document.querySelectorAll("details")) fold.open = true;
		});
		await page.waitForLoadState("networkidle");
		for (const found of await page.evaluate(beyond, 320)) wide.push(`${screen}: ${found}`);
		expect(await language()).toBe("de");
	}
	expect(wide).toEqual([]);
});

test("the tank says in German what it says, by the rules of accessibility", async () => {
	await page.goto(`${site.origin}/#/tank`);
	await verdict().waitFor();
	await page.getByText("Am ehesten etwa", { exact: true }).waitFor();
	expect(await axe(page)).toEqual([]);
});

/** Runs in the page: what makes it scroll sideways. The window itself grows with its contents. */
function beyond(width: number): string[] {
	if (document.documentElement.scrollWidth <= width) return [];
	const all = [...document.querySelectorAll<HTMLElement>("body *")];
	const wide = all.filter((element) => element.getBoundingClientRect().right > width + 1);
	return wide.map((element) => `${element.tagName} ${element.className} ${element.textContent?.slice(0, 40)}`);
}
