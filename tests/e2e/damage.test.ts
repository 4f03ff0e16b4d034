/** Storage that goes bad under the app, on a real profile: cut off, spoilt, or gone. The app says so, and two taps bring it all back. */
import { readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { answerQuestion, shownOn } from "./account";
import { axe, newFolder, openPhone, type Phone } from "./harness";
import { openSite, type Site } from "./site";

const profile = newFolder();
let site: Site;
let phone: Phone;
let page: Page;

async function open(): Promise<void> {
	phone = await openPhone(profile.path);
	page = phone.page;
	page.setDefaultTimeout(60_000);
	await page.goto(`${site.origin}/#/tank`);
}

beforeAll(async () => {
	site = await openSite(inject("dist"));
	await open();
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	profile.remove();
});

const button = (name: string | RegExp) => page.getByRole("button", { name, exact: typeof name === "string" });
const missing = () => page.getByRole("alert", { name: /^Part of the log is missing/ });
const toast = (text: RegExp) => page.getByText(text);

/** What the driver sees of the account, once it is in the second copy, too. */
async function shown(): Promise<(string | null)[]> {
	const seen = await shownOn(page, site.origin);
	await settled();
	return seen;
}

/** Waits until the account is reckoned and what was written is in the second copy, too. */
async function settled(): Promise<void> {
	await page.getByText(/Reckoning the log anew/).waitFor({ state: "detached" });
	await expect.poll(copiedEntries, { timeout: 60_000 }).toBe(await storedEntries());
}

async function storedEntries(): Promise<number> {
	return page.evaluate(
		() =>
			new Promise<number>((done, fail) => {
				const request = indexedDB.open("heeltap");
				request.onerror = () => fail(request.error);
				request.onsuccess = () => {
					const count = request.result.transaction("events").objectStore("events").count();
					count.onsuccess = () => {
						request.result.close();
						done(count.result);
					};
				};
			}),
	);
}

/** Entries in the rescue copy. */
async function copiedEntries(): Promise<number> {
	const text = await page.evaluate(async () => {
		const root = await navigator.storage.getDirectory();
		const folder = (await root.getDirectoryHandle("heeltap-rescue", { create: true })) as unknown as {
			values(): AsyncIterable<{ getFile(): Promise<File> }>;
		};
		let all = "";
		for await (const file of folder.values()) all += await (await file.getFile()).text();
		return all;
	});
	const lines = text.split("\n").filter((line) => line !== "");
	const events = lines.flatMap((line) => JSON.parse(line.slice(line.indexOf(" ") + 1)).events ?? []);
	return new Set(events.map(({ id }: { id: string }) => id)).size;
}

async function fill(litres: string): Promise<void> {
	await page.goto(`${site.origin}/#/fill`);
	await button(/^Gasoline E10/).click();
	for (const key of litres) await button(key).click();
	await button(new RegExp(`^Save ${litres}`)).click();
	await answerQuestion(page);
	await button(/^Dismiss: Saved/).click();
}

/** Folder of the database. */
function database(): string {
	const folder = join(profile.path, "Default/IndexedDB");
	const name = readdirSync(folder).find((entry) => entry.endsWith(".leveldb"));
	if (!name) throw new Error("the profile has no database");
	return join(folder, name);
}

/** The newest log of the database. */
function newestLog(): string {
	const logs = readdirSync(database()).filter((name) => name.endsWith(".log"));
	return join(database(), logs.sort().at(-1) ?? "");
}

let before: (string | null)[] = [];

test("a log of some length is on the phone, in two places", { timeout: 240_000 }, async () => {
	await button(/^Look around/).click();
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
	for (const litres of ["3", "4", "5"]) await fill(litres);
	before = await shown();
	expect(before.length).toBeGreaterThan(10);
});

const ways: readonly (readonly [string, () => void])[] = [
	["cut off at two thirds", () => truncateSync(newestLog(), Math.floor(readFileSync(newestLog()).length * 0.66))],
	[
		"spoilt in the middle",
		() => {
			const bytes = readFileSync(newestLog());
			const middle = Math.floor(bytes.length * 0.5);
			writeFileSync(newestLog(), bytes.fill(0x5a, middle, middle + 64));
		},
	],
	["deleted", () => rmSync(database(), { recursive: true })],
];

test.each(ways)(
	"a database that was %s is noticed, and brought back with two taps",
	{ timeout: 240_000 },
	async (_, damage) => {
		await phone.kill();
		damage();
		await open();
		await missing().waitFor();
		expect(await axe(page)).toEqual([]);
		await button("See what is missing").click();
		await missing()
			.getByText(/A second copy on this phone has all of it/)
			.waitFor();
		expect(await axe(page)).toEqual([]);
		await button("Bring everything back").click();
		await toast(/^Back: /).waitFor();
		expect(await missing().count()).toBe(0);
		await button(/^Dismiss: Back/).click();
		expect(await shown()).toEqual(before);
	},
);

test("nothing is reported after that, and the account goes on", async () => {
	await phone.kill();
	await open();
	await fill("6");
	await settled();
	expect(await missing().count()).toBe(0);
});
