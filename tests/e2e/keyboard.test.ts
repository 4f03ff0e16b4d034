/** What a driver does, by keys alone: every place is reached and seen, and the focus is never lost on the way. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { aCar, aFill, aStart } from "../helpers/logs";
import { newFolder, openPhone, type Phone } from "./harness";
import { keysOn } from "./keys";
import { openSite, type Site } from "./site";

const profile = newFolder();
let site: Site;
let phone: Phone;
let page: Page;
let keys: ReturnType<typeof keysOn>;

beforeAll(async () => {
	site = await openSite(inject("dist"));
	phone = await openPhone(profile.path, { serviceWorkers: "block" });
	page = phone.page;
	page.setDefaultTimeout(20_000);
	keys = keysOn(page);
	await page.goto(`${site.origin}/`);
	await page.getByRole("heading", { name: /car/i }).first().waitFor();
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	profile.remove();
});

const text = (words: RegExp) => page.getByText(words).first().waitFor();

test("the invented car is opened", async () => {
	await keys.to(/^Look around/);
	await keys.press("Enter");
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
	await keys.on(/^Tank$/);
	expect(await page.title()).toBe("Tank · Heeltap");
});

test("a fill is recorded, and undone", async () => {
	await keys.to(/^Fill$/);
	await keys.press("Enter");
	await keys.on(/^Fill$/);
	expect(await page.title()).toBe("Fill · Heeltap");
	await keys.to(/^Gasoline E10/);
	await keys.press("Space");
	await keys.on(/^Gasoline E10/);
	await keys.to(/^Amount/);
	await keys.type("5");
	await text(/^After 5.gal/);
	await keys.to(/^Save 5.gal/);
	await keys.press("Enter");
	await text(/^Saved\./);
	await keys.on(/^Tank$/);
	await text(/5.gal of “Gasoline E10/);
	await keys.backTo(/^Undo$/);
	// Whoever has reached a message takes their time.
	await page.waitForTimeout(8_500);
	await keys.on(/^Undo$/);
	await keys.press("Enter");
	await keys.on(/^Tank$/);
	await page.getByText(/5.gal of “Gasoline E10/).waitFor({ state: "detached" });
	await keys.on(/^Tank$/);
});

test("past the lean limit the question takes the keys, keeps them, and gives them back", async () => {
	await keys.to(/^Fill$/);
	await keys.press("Enter");
	await keys.on(/^Fill$/);
	await keys.to(/^Flex fuel E85/);
	await keys.press("Space");
	// The keys of the app, not those of the keyboard.
	await keys.to(/^9$/);
	await keys.press("Space");
	await keys.on(/^9$/);
	await keys.to(/^Save 9.gal/);
	await keys.press("Enter");
	await keys.on(/^Go back$/);
	await keys.press("Tab");
	await keys.on(/^Save it, it is in the tank$/);
	await keys.press("Escape");
	await keys.on(/^Save 9.gal/);
	await keys.to(/^Start this form over$/);
	await keys.press("Enter");
	await page.getByRole("button", { name: "Save", exact: true }).waitFor();
	await keys.on(/./);
});

test("an amount that is refused is said, and leads back to its field", async () => {
	await keys.backTo(/^Save$/);
	await keys.press("Enter");
	await page.getByRole("alert").waitFor();
	const field = page.getByRole("textbox", { name: /^Amount/ });
	expect(await field.getAttribute("aria-invalid")).toBe("true");
	const described = (await field.getAttribute("aria-describedby")) ?? "";
	expect(await page.locator(`[id="${described}"]`).textContent()).toBe(await page.getByRole("alert").textContent());
	await keys.on(/^Save$/);
});

test("a stop is planned, with a look at the gauge", async () => {
	await keys.backTo(/^How much of each/);
	await keys.press("Enter");
	await keys.on(/^What to pump$/);
	// The answer comes in above what is asked.
	await page.getByRole("button", { name: "Note the gauge" }).waitFor();
	await keys.to(/^Note the gauge$/);
	await keys.press("Enter");
	await keys.on(/^Fuel gauge now/);
	await keys.press("ArrowLeft", "ArrowLeft", "ArrowLeft", "ArrowLeft");
	await text(/^¼ \(25.%\)/);
	await keys.to(/a step less$/);
	for (let step = 0; step < 5; step++) await keys.press("Space");
	await keys.on(/a step less$/);
	await text(/^empty \(0.%\)/);
	await keys.to(/a step more$/);
	await keys.press("Space", "Space");
	await page.getByRole("button", { name: /^Pump this/ }).waitFor();
	await keys.backTo(/^Pump this/);
	await keys.press("Enter");
	await keys.on(/^Fill$/);
	await page.getByRole("heading", { name: /gal of/ }).waitFor();
});

test("an entry is corrected, and the log is where it was", async () => {
	await keys.to(/^Log$/);
	await keys.press("Enter");
	await keys.on(/^Log$/);
	await keys.to(/7.011.gal of “Gasoline E10/);
	await keys.press("Enter");
	await keys.on(/^Entry of the log$/);
	await keys.to(/^Correct this stop$/);
	await keys.press("Enter");
	await keys.on(/^Correct a stop$/);
	await keys.to(/^Amount/);
	await keys.press("Control+a");
	await keys.type("6.9");
	await text(/^After/);
	await keys.to(/^Save /);
	await keys.press("Enter");
	const question = page.getByRole("dialog");
	await question
		.or(page.getByText(/^Saved\./))
		.first()
		.waitFor();
	if (await question.isVisible()) {
		await keys.to(/^Save it/);
		await keys.press("Enter");
	}
	await keys.on(/^Log$|6.9.gal/);
	await text(/6.9.gal/);
});

test("an entry is made void, and brought back", async () => {
	await keys.to(/6.9.gal/);
	await keys.press("Enter");
	await keys.on(/^Entry of the log$/);
	await keys.to(/^Void this stop$/);
	await keys.press("Enter");
	await keys.on(/^Log$/);
	await keys.to(/^Show .* void|void/);
	await keys.press("Space");
	await keys.to(/^Bring back/);
	await keys.press("Enter");
	// Its row is another one now.
	await page.waitForTimeout(500);
	expect((await keys.focused()).wrong).toEqual([]);
});

test("a calibration is entered", async () => {
	await keys.to(/^Car$/);
	await keys.press("Enter");
	await keys.on(/^Car$/);
	await keys.to(/calibration$/i);
	await keys.press("Enter");
	await keys.on(/^Calibration$/);
	await keys.to(/^Save the calibration$/);
	await keys.press("Enter");
	await keys.on(/^Made for/);
	await keys.type("20");
	await keys.to(/^Name of the calibration/);
	await keys.type("Mild");
	await keys.to(/^1 in 20|^1 in/);
	await keys.press("ArrowDown");
	await keys.to(/^Save the calibration$/);
	await keys.press("Enter");
	await text(/“Mild” is saved/);
	await keys.on(/^Car$/);
});

test("a reading is taken", async () => {
	await keys.to(/^Tank$/);
	await keys.press("Enter");
	await keys.on(/^Tank$/);
	await keys.to(/^Enter a measurement$/);
	await keys.press("Enter");
	await keys.on(/^Measurement$/);
	await keys.press("Tab", "Enter");
	await keys.on(/^Measurement$/);
	await keys.to(/^It shows, % ethanol/);
	await keys.type("31");
	// What it would do comes in above the button.
	await page.locator("main form [aria-live]").first().waitFor();
	await keys.to(/^Save/);
	await keys.press("Enter");
	await keys.on(/^Tank$/);
	await text(/measured/);
});

test("a log is opened from a file", async () => {
	const file = join(profile.path, "other.json");
	// Asked for early, or the browser's own window would open.
	const chosen = page.waitForEvent("filechooser");
	writeFileSync(file, formatLog({ car: aCar(), events: [aStart(), aFill()] }));
	await keys.to(/^Car$/);
	await keys.press("Enter");
	await keys.on(/^Car$/);
	await keys.to(/^Open a backup/);
	await keys.press("Enter");
	await (await chosen).setFiles(file);
	await text(/is here now/);
	expect((await keys.focused()).wrong).toEqual([]);
});
