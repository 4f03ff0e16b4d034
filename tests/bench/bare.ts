/** The app beside a bare page that writes one record: ratios, which differ less from machine to machine than times. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { build } from "vite";
import { formatLog } from "../../src/store/backup";
import { buildApp } from "../e2e/build";
import { openPhone, throttle, untilOffline } from "../e2e/harness";
import { openSite } from "../e2e/site";
import { median } from "./browser";
import { benchCar, longLog } from "./longLog";

/** Medians, ms. */
export interface Beside {
	readonly app: Times;
	readonly bare: Times;
}

interface Times {
	/** From navigation until there is something to use. */
	readonly start: number;
	/** From the tap until the screen says that it is kept. */
	readonly save: number;
}

interface Subject {
	readonly page: Page;
	/** Opens it anew. */
	open(): Promise<void>;
	/** Gets ready for the tap. */
	fill(): Promise<void>;
	readonly button: string | RegExp;
	readonly shown: string;
	readonly kept: string;
}

const rounds = 9;

export async function besideBarePage(stops: number, rate: number): Promise<Beside> {
	const folder = mkdtempSync(join(tmpdir(), "heeltap-bare-"));
	buildApp(join(folder, "app"));
	const root = join(process.cwd(), "tests/bench/bare");
	await build({ root, configFile: false, logLevel: "error", base: "./", build: { outDir: join(folder, "bare") } });
	const sites = { app: await openSite(join(folder, "app")), bare: await openSite(join(folder, "bare")) };
	const phone = await openPhone(join(folder, "profile"));
	try {
		const [appPage, barePage] = [phone.page, await phone.context.newPage()];
		await setUp(appPage, sites.app.origin, join(folder, "log.json"), stops);
		const app: Subject = {
			page: appPage,
			open: () => reopen(appPage, `${sites.app.origin}/?${Math.random()}#/tank`),
			async fill() {
				await appPage.goto(`${appPage.url().split("#")[0]}#/fill`);
				await appPage.getByRole("button", { name: "Gasoline E10" }).click();
				await appPage.getByRole("button", { name: "4", exact: true }).click();
				// Half-typed forms are written, too; what is measured is the save alone.
				await appPage.waitForTimeout(1_500);
			},
			button: /^Save 4/,
			shown: ".dotplot",
			kept: ".toasts .toast",
		};
		const bare: Subject = {
			page: barePage,
			open: () => reopen(barePage, `${sites.bare.origin}/?${Math.random()}`),
			fill: async () => {},
			button: "Keep",
			shown: "button",
			kept: ".kept",
		};
		for (const { page } of [app, bare]) await throttle(page, rate);
		const times = { app: [] as Times[], bare: [] as Times[] };
		for (let round = 0; round < rounds; round++) {
			times.bare.push(await timesOf(bare));
			times.app.push(await timesOf(app));
		}
		return { app: medians(times.app), bare: medians(times.bare) };
	} finally {
		await phone.close();
		for (const site of Object.values(sites)) await site.stop();
		rmSync(folder, { recursive: true, force: true });
	}
}

async function setUp(page: Page, origin: string, file: string, stops: number): Promise<void> {
	writeFileSync(file, formatLog({ car: { ...benchCar, calibrations: [] }, events: longLog(stops, Date.now()) }));
	await page.goto(`${origin}/#/setup`);
	await page.locator('input[type="file"]').setInputFiles(file);
	await page.getByRole("heading", { name: /^Boost/ }).waitFor({ timeout: 600_000 });
	await untilOffline(page);
}

async function reopen(page: Page, address: string): Promise<void> {
	await page.goto("about:blank");
	await page.goto(address);
}

async function timesOf({ page, open, fill, button, shown, kept }: Subject): Promise<Times> {
	await page.bringToFront();
	await open();
	await page.locator(shown).first().waitFor();
	const start = await page.evaluate(
		() => performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? performance.now(),
	);
	// The account itself is brought up to date behind the picture.
	await page.waitForTimeout(2_000);
	await fill();
	await page.evaluate(watchFor, kept);
	await page.getByRole("button", { name: button }).click();
	await page.waitForFunction(() => window.heeltapKept > 0);
	return { start, save: await page.evaluate(() => window.heeltapKept) };
}

declare global {
	interface Window {
		heeltapKept: number;
	}
}

/** Runs in the page: notes the time from the next click until what says "kept" changes. */
function watchFor(kept: string): void {
	window.heeltapKept = 0;
	const text = () => document.querySelector(kept)?.textContent ?? "";
	document.addEventListener(
		"click",
		() => {
			const [began, before] = [performance.now(), text()];
			const observer = new MutationObserver(() => {
				if (text() === before) return;
				observer.disconnect();
				window.heeltapKept = performance.now() - began;
			});
			observer.observe(document, { subtree: true, childList: true, characterData: true });
		},
		{ capture: true, once: true },
	);
}

function medians(times: readonly Times[]): Times {
	return { start: median(times.map(({ start }) => start)), save: median(times.map(({ save }) => save)) };
}
