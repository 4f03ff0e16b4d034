/** The restore, rehearsed: what was logged, saved and lost comes back from the file, to the last bit. And the file that writes itself. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog, parseLog } from "../../src/store/backup";
import { aCar, aFill, aStart } from "../helpers/logs";
import { answerQuestion, figuresOf, shownOn } from "./account";
import { axe, newFolder, openPhone, type Phone } from "./harness";
import { openSite, type Site } from "./site";

const folder = newFolder();
let site: Site;
let phone: Phone;
let page: Page;

async function open(): Promise<void> {
	phone = await openPhone(join(folder.path, "profile"));
	page = phone.page;
	page.setDefaultTimeout(60_000);
	// No picker can be driven here: the browser's own file system gives a handle that is as real.
	await page.addInitScript(() => {
		const picker = async ({ suggestedName }: { suggestedName: string }) =>
			(await navigator.storage.getDirectory()).getFileHandle(suggestedName, { create: true });
		Object.assign(window, { showSaveFilePicker: picker });
	});
	await page.goto(`${site.origin}/#/tank`);
}

beforeAll(async () => {
	site = await openSite(inject("dist"));
	await open();
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	folder.remove();
});

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });
const daysAgo = (days: number) => new Date(Date.now() - days * 86_400_000).toISOString();

async function openFile(path: string): Promise<void> {
	await page.locator('input[type="file"]').setInputFiles(path);
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
}

async function fill(litres: string): Promise<void> {
	await page.goto(`${site.origin}/#/fill`);
	await button(/^Flex fuel E85 \(US\)/).click();
	for (const key of litres) await button(key).click();
	await button(new RegExp(`^Save ${litres}`)).click();
	await answerQuestion(page);
	await button(/^Dismiss: Saved/).click();
}

/** What the driver sees of the account, and the figures behind it. */
const account = async () => [...(await shownOn(page, site.origin)), await figuresOf(page)];

/** A car as it was set up some weeks ago, with a few stops. */
function begun(): string {
	const path = join(folder.path, "begun.json");
	const stops = [30, 20, 10].map((days) =>
		aFill({ id: `f${days}`, stop: `s${days}`, at: daysAgo(days), litres: 12.5, gauge: 0.5 }),
	);
	const events = [aStart({ at: daysAgo(40), contents: { range: [0.05, 0.1] } }), ...stops];
	writeFileSync(path, formatLog({ car: aCar(), events }));
	return path;
}

const saved = () => join(folder.path, "saved.json");
let before: unknown[] = [];

test("fills are logged, and a backup of them is saved", async () => {
	await openFile(begun());
	await fill("6");
	await fill("7");
	before = await account();
	await page.goto(`${site.origin}/#/car`);
	await page.getByText(/with 4 entries\. 2 entries since then are here only/).waitFor();
	const [download] = await Promise.all([page.waitForEvent("download"), button("Save a backup").click()]);
	await download.saveAs(saved());
	await page
		.getByText(/^Last backup: saved within the last hour, with 6 entries\. Nothing was added since\.$/)
		.waitFor();
	expect(parseLog(readFileSync(saved(), "utf8"))).toMatchObject({ ok: true, value: { events: { length: 6 } } });
});

test("after all the site’s data was wiped the backup brings back the same numbers, to the last digit", async () => {
	const session = await page.context().newCDPSession(page);
	await page.goto("about:blank");
	await session.send("Storage.clearDataForOrigin", { origin: site.origin, storageTypes: "all" });
	await page.goto(`${site.origin}/#/tank`);
	await page.getByRole("textbox", { name: "Name of the car" }).waitFor();
	await openFile(saved());
	const after = await account();
	expect(after).toEqual(before);
	expect(after.length).toBeGreaterThan(8);
});

/** The file that writes itself, in the browser's own file system. */
function ownFile(name: string): Promise<string> {
	return page.evaluate(async (name) => {
		const root = await navigator.storage.getDirectory();
		return (await (await root.getFileHandle(name)).getFile()).text();
	}, name);
}

test("a chosen file has the log after every save, also after the browser was killed", async () => {
	await page.goto(`${site.origin}/#/car`);
	await button("Choose a file…").click();
	const words = page.getByText(/^The log is written to “heeltap-the-grey-one-since-/);
	const name = /“(.+)”/.exec((await words.textContent()) ?? "")?.[1] ?? "";
	await expect.poll(() => ownFile(name), { timeout: 30_000 }).toBe(readFileSync(saved(), "utf8"));
	expect(await axe(page)).toEqual([]);

	await fill("8");
	await expect.poll(async () => entries(await ownFile(name)), { timeout: 30_000 }).toBe(7);
	await phone.kill();
	await open();
	await fill("9");
	await expect.poll(async () => entries(await ownFile(name)), { timeout: 30_000 }).toBe(8);
	await page.goto(`${site.origin}/#/car`);
	await page.getByText(/Last backup: written within the last hour, with 8 entries\. Nothing was added since/).waitFor();
	expect(parseLog(await ownFile(name)).ok).toBe(true);
});

function entries(text: string): number {
	const log = parseLog(text);
	return log.ok ? log.value.events.length : 0;
}

test("a long log without a backup is reminded of below the tank, once, and in words that all can read", async () => {
	const path = join(folder.path, "long.json");
	const stops = Array.from({ length: 20 }, (_, i) =>
		aFill({ id: `f${i}`, stop: `s${i}`, at: daysAgo(60 - i), litres: 10, product: { id: "x", range: [0.3, 0.3] } }),
	);
	const start = aStart({ at: daysAgo(61), contents: { value: 0.3, sd: 0.001 } });
	writeFileSync(path, formatLog({ car: aCar({ id: "long", name: "The red one" }), events: [start, ...stops] }));
	await page.goto(`${site.origin}/#/car`);
	await page.locator('main input[type="file"]').setInputFiles(path);
	await page.getByText(/^“The red one” is here now/).waitFor();
	// The file that was opened is as good as a backup, until it is forgotten.
	await page.goto(`${site.origin}/#/tank`);
	await page.getByRole("heading", { name: "Last change" }).waitFor();
	await forget("long/backup");
	await page.reload();
	const card = page.getByRole("region", { name: "Back up the log" });
	await card.getByText(/^21 entries of the log are in no backup/).waitFor();
	expect(await axe(page)).toEqual([]);
	await card.getByRole("button", { name: "Not now" }).click();
	await card.waitFor({ state: "detached" });
	await page.reload();
	await page.getByRole("heading", { name: "Last change" }).waitFor();
	await page.goto(`${site.origin}/#/car`);
	await page.getByText("No backup has left this phone: 21 entries are here only.").waitFor();
	await page.goto(`${site.origin}/#/tank`);
	await page.getByRole("heading", { name: "Last change" }).waitFor();
	expect(await card.count()).toBe(0);
});

function forget(key: string): Promise<void> {
	return page.evaluate(
		(key) =>
			new Promise<void>((done) => {
				const request = indexedDB.open("heeltap");
				request.onsuccess = () => {
					const tx = request.result.transaction("drafts", "readwrite");
					tx.objectStore("drafts").delete(key);
					tx.oncomplete = () => {
						request.result.close();
						done();
					};
				};
			}),
		key,
	);
}
