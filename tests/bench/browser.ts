/** What a driver waits for, measured in Chromium on the built app. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { formatLog } from "../../src/store/backup";
import { buildApp } from "../e2e/build";
import { openPhone, throttle, untilOffline } from "../e2e/harness";
import { openSite } from "../e2e/site";
import { benchCar, longLog } from "./longLog";

export interface Waits {
	/** From navigation to the estimate on the screen, ms: the median of several starts. */
	readonly open: number;
	/** From a key to the preview that counts it, ms. */
	readonly preview: number;
	/** Longest task of the page while typing, ms; 0 where none passed 50 ms. */
	readonly longestTask: number;
}

/** The waits with a log of `stops` stops, the page's CPU as it is and slowed by 4. The protocol does not slow workers. */
export async function measureWaits(stops: number): Promise<{ readonly plain: Waits; readonly slowed: Waits }> {
	const folder = mkdtempSync(join(tmpdir(), "heeltap-bench-"));
	const dist = join(folder, "dist");
	buildApp(dist);
	const site = await openSite(dist);
	const phone = await openPhone(join(folder, "profile"));
	const { page } = phone;
	await page.addInitScript(watch);
	try {
		const file = join(folder, "log.json");
		writeFileSync(file, formatLog({ car: benchCar, events: longLog(stops, Date.now()) }));
		await page.goto(`${site.origin}/#/setup`);
		await page.locator('input[type="file"]').setInputFiles(file);
		await page.getByRole("heading", { name: /^Boost/ }).waitFor({ timeout: 600_000 });
		await untilOffline(page);
		const plain = await waits(page, site.origin, 1);
		const slowed = await waits(page, site.origin, 4);
		return { plain, slowed };
	} finally {
		await phone.close();
		await site.stop();
		rmSync(folder, { recursive: true, force: true });
	}
}

async function waits(page: Page, origin: string, rate: number): Promise<Waits> {
	const opens: number[] = [];
	for (let i = 0; i < 5; i++) {
		await throttle(page, rate);
		await page.goto(`${origin}/?${Math.random()}#/tank`);
		await page.getByRole("heading", { name: /^Boost/ }).waitFor();
		opens.push(await page.evaluate(() => window.heeltapBench.shown));
		// The account itself is brought up to date behind the picture.
		await page.waitForTimeout(4000);
	}
	await page.goto(`${origin}/#/fill`);
	await page.getByText(/^Before this stop/).waitFor({ timeout: 120_000 });
	const previews: number[] = [];
	await page.evaluate(() => {
		window.heeltapBench.longest = 0;
	});
	for (const key of ["1", "2", "decimal", "5"]) {
		const before = await page.evaluate(() => window.heeltapBench.previews);
		await page.getByRole("button", { name: key, exact: true }).click();
		if (key === "decimal") {
			await page.waitForTimeout(500);
			continue;
		}
		await page.waitForFunction((seen) => window.heeltapBench.previews > seen, before);
		previews.push(await page.evaluate(() => window.heeltapBench.previewed - window.heeltapBench.pressed));
		await page.waitForTimeout(500);
	}
	const longestTask = await page.evaluate(() => window.heeltapBench.longest);
	// The half-typed stop would still be there for the next round.
	await page.getByRole("button", { name: "Start this form over" }).click();
	return { open: median(opens), preview: median(previews), longestTask };
}

export function median(values: readonly number[]): number {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted[sorted.length >> 1];
}

declare global {
	interface Window {
		heeltapBench: { shown: number; pressed: number; previewed: number; previews: number; longest: number };
	}
}

/** Runs in the page: notes when the estimate appears, when a key goes down and when the preview changes. */
function watch(): void {
	window.heeltapBench = { shown: 0, pressed: 0, previewed: 0, previews: 0, longest: 0 };
	const bench = window.heeltapBench;
	let last = "";
	new MutationObserver(() => {
		if (!bench.shown && document.querySelector(".dotplot")) bench.shown = performance.now();
		const line = document.querySelector(".preview .line")?.textContent ?? "";
		if (line !== last) {
			last = line;
			bench.previewed = performance.now();
			bench.previews++;
		}
	}).observe(document, { subtree: true, childList: true, characterData: true });
	document.addEventListener(
		"click",
		() => {
			bench.pressed = performance.now();
		},
		true,
	);
	new PerformanceObserver((list) => {
		for (const entry of list.getEntries()) bench.longest = Math.max(bench.longest, entry.duration);
	}).observe({ type: "longtask" });
}
