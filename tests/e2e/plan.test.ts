/** From "what to pump?" to a saved stop, on the built app in a real browser, without a network. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator, Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { benchCar, longLog } from "../bench/longLog";
import { axe, newFolder, openPhone, type Phone, untilOffline } from "./harness";
import { openSite, type Site } from "./site";

const profile = newFolder();
const files = newFolder();
let site: Site;
let phone: Phone;
let page: Page;
const errors: string[] = [];
let taps = 0;

beforeAll(async () => {
	site = await openSite(inject("dist"));
	phone = await openPhone(profile.path);
	page = phone.page;
	page.setDefaultTimeout(30_000);
	page.on("pageerror", (error) => errors.push(error.message));
	page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
	const file = join(files.path, "log.json");
	writeFileSync(file, formatLog({ car: benchCar, events: longLog(3, Date.now()) }));
	await page.goto(`${site.origin}/#/setup`);
	await page.locator('input[type="file"]').setInputFiles(file);
	await page.getByRole("heading", { name: /^Boost/ }).waitFor({ timeout: 100_000 });
	await page.goto(`${site.origin}/#/car`);
	await page.getByRole("radio", { name: "Litres" }).click();
	await page.getByRole("button", { name: "Save the car" }).click();
	await page.getByText("The car is saved.").first().waitFor();
	await page.goto(`${site.origin}/#/tank`);
	await untilOffline(page);
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	profile.remove();
	files.remove();
});

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });
const region = (name: string) => page.getByRole("region", { name });

async function tap(what: Locator, position?: { x: number; y: number }): Promise<void> {
	taps++;
	await what.click(position ? { position } : {});
}

/** Digits are typed either way. */
async function press(digits: string): Promise<void> {
	for (const key of digits) await button(key === "." ? "decimal" : key).click();
}

/** The one amount in a line such as "7.5 L of …". */
function litresIn(text: string | null): number {
	return Number(/([\d.]+)\sL/.exec(text ?? "")?.[1]);
}

test("without a server a driver goes from “what to pump” to a saved stop, its second pour changed, in under ten taps", async () => {
	await site.stop();
	await page.reload();
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
	await tap(page.getByRole("link", { name: "What to pump" }));
	await button(/^Pump this/).waitFor();
	expect(await axe(page)).toEqual([]);
	await tap(page.getByText(/^Gauge now/));
	const slider = page.getByRole("slider", { name: "Fuel gauge now" });
	const { width, height } = (await slider.boundingBox()) ?? { width: 0, height: 0 };
	// The thumb's middle stays half its width inside.
	await tap(slider, { x: 18 + (width - 36) / 4, y: height / 2 });
	await page.getByText(/^Gauge now: ¼/).waitFor();
	await tap(button(/^Pump this/));

	const now = region("The plan").getByRole("heading");
	await page.getByRole("heading", { name: /^First: / }).waitFor();
	const first = litresIn(await now.textContent());
	const planned = litresIn(
		await region("The plan")
			.getByText(/^Then /)
			.textContent(),
	);
	expect(await axe(page)).toEqual([]);
	await press(String(first + 2));
	await tap(button(/^Next product/));
	const changed = region("The plan").getByText(/^Planned .* because the first came out larger/);
	await changed.waitFor();
	const second = litresIn(await now.textContent());
	expect(second).toBeLessThan(planned - 1);
	expect(await axe(page)).toEqual([]);
	await press(String(second));
	await tap(button(/^Save .* \+ /));
	const asked = button("Save it, it is in the tank");
	const saved = page.getByText(/^Saved\./);
	await asked.or(saved).first().waitFor();
	if (await asked.isVisible()) await tap(asked);
	await saved.waitFor();
	await page.getByText(new RegExp(`${first + 2}.L of “.*” and ${second}.L of “.*”.*filled to the click`)).waitFor();
	console.log(`${taps} taps besides the digits`);
	expect(taps).toBeLessThan(10);
});

test("the next plan is for the next stop: nothing of the last one is in it", async () => {
	await page.getByRole("link", { name: "What to pump" }).click();
	await button(/^Pump this/)
		.or(region("What to pump").getByRole("status"))
		.first()
		.waitFor();
	expect(await region("Poured already").count()).toBe(0);
	await page.getByText("Gauge now: not looked").waitFor();
});

/** In every light, with everything unfolded. */
async function soundInAnyLight(what: string): Promise<void> {
	for (const theme of ["light", "dark", "sun"]) {
		await page.evaluate((chosen) => {
			document.documentElement.dataset.theme = chosen;
			for (const details of document.querySelectorAll("details")) details.open = true;
		}, theme);
		expect(await axe(page), `${what}, ${theme}`).toEqual([]);
	}
}

test("plan and guided pour are free of breaches of accessibility, in every light", async () => {
	await button("Another product").click();
	await page.getByText("What else could be done").click();
	await page.getByText(/^(Burn about|Driving some off first|How much to drive off first)/).waitFor();
	await soundInAnyLight("plan");
	await button(/^Pump this/).click();
	await button(/as planned$/).click();
	await soundInAnyLight("guided pour");
});

test("no error was logged, and no request has left the origin", () => {
	expect(errors.filter((text) => !/ERR_CONNECTION_REFUSED|ERR_PROXY/.test(text))).toEqual([]);
	expect(phone.leaks(site.origin)).toEqual([]);
});
