/** A large data log in a real browser: the page has to answer all the while. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test, vi } from "vitest";
import { formatLog } from "../../src/store/backup";
import { aCar, aStart } from "../helpers/logs";
import { writeLongCsv } from "../helpers/longCsv";
import { axe, newFolder, openPhone, type Phone } from "./harness";
import { watchPage } from "./pageWatch";
import { openSite, type Site } from "./site";

const folder = newFolder();
const file = join(folder.path, "long drive.csv");
let site: Site;
let phone: Phone;
let page: Page;
const errors: string[] = [];
/** Two cores that others use as well take minutes for what a quiet machine does in seconds. */
const patienceMs = 300_000;
vi.setConfig({ testTimeout: 2 * patienceMs, hookTimeout: 2 * patienceMs });

beforeAll(async () => {
	site = await openSite(inject("dist"));
	phone = await openPhone(join(folder.path, "profile"));
	page = phone.page;
	page.on("pageerror", (error) => errors.push(error.message));
	page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
	page.setDefaultTimeout(patienceMs);
	const car = join(folder.path, "car.json");
	writeFileSync(car, formatLog({ car: aCar(), events: [aStart()] }));
	await page.goto(`${site.origin}/#/setup`);
	await page.locator('input[type="file"]').setInputFiles(car);
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	folder.remove();
});

test("a log of 20 MB becomes a reading while the page goes on answering", async () => {
	const rows = writeLongCsv(file, 20e6, { seed: "20 MB", trim: 0.06, pulls: true, banks: [0.01, -0.01], ethanol: 0.4 });
	await page.goto(`${site.origin}/#/datalog`);
	const input = page.locator('input[type="file"]');
	await input.waitFor({ state: "attached" });
	const watch = await watchPage(page);
	await input.setInputFiles(file);
	const began = performance.now();
	await page.getByRole("progressbar", { name: "Share of the log that is read" }).waitFor();
	await page.getByRole("region", { name: "Fuel trim of steady driving" }).waitFor();
	const tookMs = performance.now() - began;
	const { longestWork, longestGap } = await watch.stop();
	expect(longestWork).toBeLessThan(100);
	// Read in one go on the page's own thread, the log would stop it for as long as it takes; a busy machine slows both.
	expect(longestGap).toBeLessThan(Math.max(1500, tookMs / 2));

	// Grouped as the browser's language does it.
	const count = await page.evaluate((rows) => new Intl.NumberFormat().format(rows), rows);
	const told = await page.getByRole("region", { name: "The log" }).locator("dd").allTextContents();
	expect(told[0].startsWith(`${count} rows, averaged over `), told[0]).toBe(true);
	expect(told[2]).toBe("nothing");
	await page
		.getByText(/^\+[56](\.\d)?.%$/)
		.first()
		.waitFor();
	await page
		.getByRole("region", { name: "Lambda under load" })
		.getByText(/says the same as the trims/)
		.waitFor();
	expect(await axe(page)).toEqual([]);
});

test("the reading is in the account after a tap, and gone after another", async () => {
	await page.getByRole("button", { name: /^Save \+/ }).click();
	await page.getByText(/^Saved\./).waitFor();
	await page.getByRole("button", { name: "Undo" }).click();
	await page.getByRole("button", { name: /^Save \+/ }).waitFor();
});

test("no error was logged, and the file has not left the phone", () => {
	expect(errors).toEqual([]);
	expect(phone.leaks(site.origin)).toEqual([]);
});
