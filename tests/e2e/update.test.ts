/** From one built version of the app to the next, over one that was never run, and back, on a phone with a log. */
import { cpSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { aCar, aFill, aStart } from "../helpers/logs";
import { buildApp } from "./build";
import { newFolder, openPhone, type Phone, untilOffline } from "./harness";
import { openSite, type Site } from "./site";

const folder = newFolder();
const inFolder = (name: string) => join(folder.path, name);
const first = inject("dist");
const ownVersion: string = JSON.parse(readFileSync(join(import.meta.dirname, "../../package.json"), "utf8")).version;
const errors: string[] = [];
let site: Site;
let phone: Phone;
let page: Page;
/** What the Tank screen says before any update. */
let figures: string;

beforeAll(async () => {
	for (const version of ["9.0.1", "9.0.2", "9.0.3"]) buildApp(inFolder(version), version);
	site = await openSite(first);
	phone = await openPhone(inFolder("profile"));
	follow(phone.page);
	writeFileSync(inFolder("log.json"), formatLog({ car: aCar({ calibrations: [] }), events: [aStart(), aFill()] }));
	await page.goto(`${site.origin}/#/setup`);
	await page.locator('input[type="file"]').setInputFiles(inFolder("log.json"));
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
	await untilOffline(page);
	figures = await tank();
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	folder.remove();
});

function follow(next: Page): void {
	page = next;
	page.setDefaultTimeout(30_000);
	page.on("pageerror", (error) => errors.push(error.message));
}

async function tank(): Promise<string> {
	await page.goto(`${site.origin}/#/tank`);
	await page.locator("dl.figures").waitFor();
	return (await page.locator("dl.figures").textContent()) ?? "";
}

async function version(): Promise<string> {
	await page.goto(`${site.origin}/#/car`);
	return (await page.getByText(/^\s*Heeltap \d/).textContent())?.trim().split(" ")[1] ?? "";
}

const savesAs = (amount: string) => new RegExp(`^Save ${amount}\\b`);
const offer = () => page.getByRole("button", { name: "Restart" });

/** Types half a stop, and takes the new version that is offered. The form, the log and the figures must come through. */
async function takeOver(digit: string): Promise<void> {
	await page.goto(`${site.origin}/#/fill`);
	await page.getByRole("button", { name: "Gasoline E10" }).click();
	await page.getByRole("button", { name: digit, exact: true }).click();
	await page.getByRole("button", { name: savesAs(digit) }).waitFor();
	await Promise.all([page.waitForEvent("load"), offer().click()]);
	await page.getByRole("button", { name: savesAs(digit) }).waitFor();
	await page.getByRole("button", { name: "Start this form over" }).click();
	expect(await tank()).toBe(figures);
}

test("a new version is found, waits while a form is half typed, and takes over when the driver says so", async () => {
	await page.goto(`${site.origin}/#/fill`);
	await page.getByRole("button", { name: "Gasoline E10" }).click();
	await page.getByRole("button", { name: "7", exact: true }).click();
	site.deploy(inFolder("9.0.1"));
	// As when the driver comes back to the app.
	await page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));
	await offer().waitFor();
	await page.getByRole("button", { name: savesAs("7") }).waitFor();
	await page.reload();
	await page.getByRole("button", { name: savesAs("7") }).waitFor();
	expect(await version()).toBe(ownVersion);
	await offer().waitFor();
	await page.goto(`${site.origin}/#/fill`);
	await page.getByRole("button", { name: "Start this form over" }).click();
	await takeOver("5");
	expect(await version()).toBe("9.0.1");
});

test("one version may be left out, the browser killed while it waits", async () => {
	site.deploy(first);
	await page.reload();
	await offer().waitFor();
	await phone.kill();
	site.deploy(inFolder("9.0.2"));
	phone = await openPhone(inFolder("profile"));
	follow(phone.page);
	expect(await tank()).toBe(figures);
	await offer().waitFor();
	// The one that waited may just be making room for the newest.
	await expect
		.poll(() => page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.installing ?? null))
		.toBeNull();
	await takeOver("6");
	expect(await version()).toBe("9.0.2");
});

test("a version that was taken back reads what the newer one has written, whose database is newer, too", async () => {
	const grown = await page.evaluate(
		() =>
			new Promise<number>((done, fail) => {
				const asking = indexedDB.open("heeltap", 99);
				asking.onupgradeneeded = () => asking.result.createObjectStore("of the newer version");
				asking.onerror = () => fail(asking.error);
				asking.onsuccess = () => {
					asking.result.close();
					done(asking.result.version);
				};
			}),
	);
	expect(grown).toBe(99);
	site.deploy(first);
	await page.reload();
	await offer().waitFor();
	await takeOver("4");
	expect(await version()).toBe(ownVersion);
	await page.goto(`${site.origin}/#/fill`);
	await page.getByRole("button", { name: "Gasoline E10" }).click();
	await page.getByRole("button", { name: "3", exact: true }).click();
	await page.getByRole("button", { name: savesAs("3") }).click();
	await page.getByText("Saved.").waitFor();
	expect(await tank()).not.toBe(figures);
	figures = await tank();
});

test("half a deploy changes nothing: the old version goes on, with and without a network", async () => {
	cpSync(inFolder("9.0.3"), inFolder("half"), { recursive: true });
	rmSync(join(inFolder("half"), "assets"), { recursive: true });
	site.deploy(inFolder("half"));
	const asked = site.requests.length;
	await page.reload();
	await expect
		.poll(() => site.requests.slice(asked).filter((path) => path.startsWith("/assets/")).length)
		.toBeGreaterThan(0);
	expect(await tank()).toBe(figures);
	expect(await version()).toBe(ownVersion);
	await site.stop();
	await page.reload();
	expect(await tank()).toBe(figures);
	await site.start();
	site.deploy(inFolder("9.0.3"));
	await page.reload();
	await offer().waitFor();
	await takeOver("8");
	expect(await version()).toBe("9.0.3");
});

test("a page without a service worker whose parts are gone from the server starts anew by itself, once", async () => {
	const other = await openPhone(inFolder("without"), { serviceWorkers: "block" });
	try {
		site.deploy(first);
		const { page } = other;
		await page.goto(`${site.origin}/#/setup`);
		await page.locator('input[type="file"]').setInputFiles(inFolder("log.json"));
		await page.getByRole("heading", { name: /^Boost/ }).waitFor();
		site.deploy(inFolder("9.0.2"));
		const again = page.waitForEvent("load");
		await page.evaluate(() => {
			location.hash = "#/costs";
		});
		await again;
		await page
			.getByRole("heading", { name: "Consumption and range" })
			.or(page.getByRole("heading", { name: "Fuel bought" }))
			.first()
			.waitFor();
	} finally {
		await other.close();
	}
});

test("none of it threw", () => expect(errors).toEqual([]));
