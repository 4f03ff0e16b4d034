/** Two real browsers with the built app, a real server, and a bad network between them. */
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { formatLog } from "../../src/store/backup";
import type { Log } from "../../src/store/wire";
import { newFolder, openPhone, type Phone } from "../e2e/harness";
import { openSite, type Site } from "../e2e/site";
import { type Cutter, openCutter } from "./cutter";
import { type NatsServer, openNatsServer } from "./natsServer";

export interface World {
	readonly site: Site;
	readonly server: NatsServer;
	readonly cutter: Cutter;
	readonly first: Phone;
	readonly second: Phone;
	/** Errors that pages told of, but for connections that were cut. */
	readonly errors: string[];
	/** An address that phones find the server under: of the app's own host, through the bad network. */
	readonly url: string;
	close(): Promise<void>;
}

export async function openWorld(dist: string): Promise<World> {
	const folder = newFolder();
	const server = await openNatsServer();
	const cutter = await openCutter(server.port);
	const site = await openSite(dist, cutter.port);
	const first = await openPhone(join(folder.path, "first"));
	const second = await openPhone(join(folder.path, "second"));
	const errors: string[] = [];
	for (const { page } of [first, second]) {
		page.setDefaultTimeout(120_000);
		page.on("pageerror", (error) => errors.push(error.message));
		page.on("console", (message) => {
			if (message.type() === "error" && !/WebSocket/.test(message.text())) errors.push(message.text());
		});
	}
	return {
		site,
		server,
		cutter,
		first,
		second,
		errors,
		url: `${site.origin.replace(/^http/, "ws")}/live`,
		async close() {
			await first.close();
			await second.close();
			await site.stop();
			await cutter.close();
			await server.remove();
			folder.remove();
		},
	};
}

export const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name, exact: true });

/** Opens a log file and keeps it, as its driver does. */
export async function keepLog(page: Page, site: Site, log: Log): Promise<void> {
	await page.goto(`${site.origin}/#/take`);
	const file = { name: "log.json", mimeType: "application/json", buffer: Buffer.from(formatLog(log)) };
	await page.locator('input[accept*="json"]').setInputFiles(file);
	await button(page, "Keep").click();
	await page.waitForURL(/#\/tank/);
}

export async function switchOn(page: Page, link: string): Promise<void> {
	await openHash(page, link);
	await button(page, "Switch on").click();
	await page.getByRole("heading", { name: "Another phone for this car" }).waitFor();
}

export async function pair(from: Page, to: Page): Promise<void> {
	await button(from, "Show the code").click();
	await from.locator("svg.qr").waitFor();
	const link = (await from.locator(".linktext").textContent()) ?? "";
	await openHash(to, link);
	await button(to, "Keep").click();
	await to.waitForURL(/#\/live$/);
}

/** What stands behind the # of a link, in the app that is open. */
export async function openHash(page: Page, link: string): Promise<void> {
	await page.evaluate(
		(hash) => {
			location.hash = hash;
		},
		link.slice(link.indexOf("#")),
	);
}

export interface Kept {
	/** Ids by car. */
	readonly ids: Readonly<Record<string, readonly string[]>>;
	/** Figures of the tanks, by car. */
	readonly shown: Readonly<Record<string, unknown>>;
}

/** All events, and the tanks as last reckoned, from the page's own database. */
export function keptBy(page: Page): Promise<Kept> {
	return page.evaluate(
		() =>
			new Promise<Kept>((done, fail) => {
				const request = indexedDB.open("heeltap");
				request.onerror = () => fail(request.error);
				request.onsuccess = () => {
					const db = request.result;
					const tx = db.transaction(["events", "checkpoints"]);
					const ids: Record<string, string[]> = {};
					const shown: Record<string, unknown> = {};
					const keys = tx.objectStore("events").getAllKeys();
					keys.onsuccess = () => {
						for (const [carId, id] of keys.result as unknown as [string, string][]) {
							ids[carId] ??= [];
							ids[carId].push(id);
						}
						for (const carId of Object.keys(ids)) {
							const tank = tx.objectStore("checkpoints").get(`${carId}/shown`);
							tank.onsuccess = () => {
								const { count, now } = tank.result ?? {};
								shown[carId] = { count, estimate: now?.estimate, level: now?.level };
							};
						}
					};
					tx.oncomplete = () => {
						db.close();
						done({ ids, shown });
					};
				};
			}),
	);
}

/** Where one of the words stands in a file below the folder: as it is, with two bytes a letter, or in base64. */
export function findingsIn(folder: string, words: readonly string[]): string[] {
	const files = filesIn(folder);
	const sought = words.flatMap((word) => [
		{ word, bytes: Buffer.from(word, "utf8") },
		{ word, bytes: Buffer.from(word, "utf16le") },
		{ word, bytes: Buffer.from(word, "utf16le").swap16() },
		{ word, bytes: Buffer.from(word.replaceAll("-", ""), "hex") },
		...[0, 1, 2].map((shift) => ({ word, bytes: base64Inside(word, shift) })),
	]);
	return files.flatMap((path) => {
		const text = readFileSync(path);
		return sought
			.filter(({ bytes }) => bytes.length > 5 && text.includes(bytes))
			.map(({ word }) => `${word} in ${path}`);
	});
}

/** What of a word is the same in every base64 text that holds it so many bytes after a multiple of three. */
function base64Inside(word: string, shift: number): Buffer {
	const text = Buffer.from(`${"x".repeat(shift)}${word}`)
		.toString("base64")
		.replaceAll("=", "");
	return Buffer.from(text.slice(shift === 0 ? 0 : 4, -3));
}

export function bytesIn(folder: string): number {
	return filesIn(folder).reduce((sum, path) => sum + readFileSync(path).length, 0);
}

export function filesIn(folder: string): string[] {
	if (!existsSync(folder)) return [];
	return readdirSync(folder, { recursive: true, encoding: "utf8" })
		.map((path) => join(folder, path))
		.filter((path) => statSync(path).isFile());
}

/** What would be found if a search did find: the same files with one word more. */
export function plant(folder: string, word: string): void {
	writeFileSync(join(folder, "planted"), Buffer.from(`...${word}...`).toString("base64"));
}
