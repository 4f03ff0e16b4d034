/** How long the list of all cars takes to open. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { formatLog } from "../../src/store/backup";
import { buildApp } from "../e2e/build";
import { openPhone, throttle, untilOffline } from "../e2e/harness";
import { openSite } from "../e2e/site";
import { measuredCar } from "../helpers/reports";
import { median } from "./browser";

/** Medians of five, ms. */
export interface FleetWaits {
	/** From the tap on the tank's page until every car is in the list. */
	readonly tapped: number;
	/** The same from navigation, the app not yet started. */
	readonly started: number;
}

/** The list of `cars` cars, some of them outside their windows, the page's CPU as it is and slowed by 4. */
export async function measureFleet(cars: number): Promise<{ readonly plain: FleetWaits; readonly slowed: FleetWaits }> {
	const folder = mkdtempSync(join(tmpdir(), "heeltap-fleet-"));
	buildApp(join(folder, "dist"));
	const site = await openSite(join(folder, "dist"));
	const phone = await openPhone(join(folder, "profile"));
	const { page } = phone;
	try {
		await keepCars(page, site.origin, folder, cars);
		await untilOffline(page);
		const plain = await waits(page, site.origin, cars, 1);
		const slowed = await waits(page, site.origin, cars, 4);
		return { plain, slowed };
	} finally {
		await phone.close();
		await site.stop();
		rmSync(folder, { recursive: true, force: true });
	}
}

async function waits(page: Page, origin: string, cars: number, rate: number): Promise<FleetWaits> {
	await throttle(page, rate);
	const tapped: number[] = [];
	const started: number[] = [];
	for (let round = 0; round < 5; round++) {
		await page.goto(`${origin}/?${rate}${round}#/cars`);
		started.push(await page.evaluate(untilListed, cars));
		await page.goto(`${origin}/?${rate}${round}#/tank`);
		await page.locator(".dotplot").first().waitFor();
		await page.waitForTimeout(2_000);
		const from = await page.evaluate(() => {
			location.hash = "#/cars";
			return performance.now();
		});
		tapped.push((await page.evaluate(untilListed, cars)) - from);
	}
	return { tapped: median(tapped), started: median(started) };
}

/** As a tuner comes to them: by opening files and keeping each. */
async function keepCars(page: Page, origin: string, folder: string, cars: number): Promise<void> {
	const files = Array.from({ length: cars }, (_, i) => {
		const name = `Car ${i + 1}`;
		const path = join(folder, `${name}.json`);
		writeFileSync(path, formatLog(measuredCar(`car ${i + 1}`, name, 0.2 + (i % 10) / 40, i % 20, Date.now())));
		return path;
	});
	await page.goto(`${origin}/#/reports`);
	await page.locator('input[type="file"]').setInputFiles(files);
	for (let i = 1; i <= cars; i++) await page.getByRole("button", { name: `Keep Car ${i}`, exact: true }).click();
	await page.waitForFunction((count) => document.querySelectorAll(".carlist [role=status]").length === count, cars);
	// Each is reckoned aside, in small steps.
	await page.goto(`${origin}/#/cars`);
	await page.evaluate(untilListed, cars);
	await page.getByText("still to be reckoned").waitFor({ state: "detached", timeout: 300_000 });
}

/** Runs in the page: when the last row was in the list and painted. */
function untilListed(cars: number): Promise<number> {
	return new Promise((listed) => {
		const look = () => {
			const rows = document.querySelectorAll(".carlist li").length;
			requestAnimationFrame(rows >= cars ? () => setTimeout(() => listed(performance.now())) : look);
		};
		look();
	});
}
