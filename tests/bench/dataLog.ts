/** Reading a large data log, measured in Chromium on the built app: how long, how well the page answers, how much memory. */
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { formatLog } from "../../src/store/backup";
import { buildApp } from "../e2e/build";
import { openPhone, throttle } from "../e2e/harness";
import { type Answering, watchPage } from "../e2e/pageWatch";
import { openSite } from "../e2e/site";
import { writeLongCsv } from "../helpers/longCsv";
import { benchCar, longLog } from "./longLog";

export interface DataLogFigures extends Answering {
	readonly megabytes: number;
	readonly rows: number;
	/** From the choice of the file to the reading on the screen, s. */
	readonly seconds: number;
	/** Of the process that runs page and workers, MB, before and at the most; null where the system does not tell. */
	readonly memory: { readonly before: Memory; readonly most: Memory } | null;
}

/** What a process holds, MB: with what it shares, and by itself. */
interface Memory {
	readonly resident: number;
	readonly own: number;
}

const sampleEveryMs = 100;

/** The page's CPU slowed by `rate`. The protocol does not slow workers. */
export async function measureDataLog(megabytes: number, rate: number): Promise<DataLogFigures> {
	const folder = mkdtempSync(join(tmpdir(), "heeltap-bench-log-"));
	const dist = join(folder, "dist");
	buildApp(dist);
	const site = await openSite(dist);
	const phone = await openPhone(join(folder, "profile"));
	const { page } = phone;
	page.setDefaultTimeout(600_000);
	try {
		const csv = join(folder, "drive.csv");
		const drive = { seed: "bench", trim: 0.06, pulls: true, banks: [0.01, -0.01], ethanol: 0.4 };
		const rows = writeLongCsv(csv, megabytes * 1e6, drive);
		const car = join(folder, "car.json");
		writeFileSync(car, formatLog({ car: benchCar, events: longLog(10, Date.now()) }));
		await page.goto(`${site.origin}/#/setup`);
		await page.locator('input[type="file"]').setInputFiles(car);
		await page.getByRole("heading", { name: /^Boost/ }).waitFor();
		await page.goto(`${site.origin}/#/datalog`);
		const input = page.locator('input[type="file"]');
		await input.waitFor({ state: "attached" });
		await page.waitForTimeout(2000);

		const processId = await rendererOf(page);
		const before = memoryOf(processId);
		const memory = watchMemory(processId);
		await throttle(page, rate);
		const watch = await watchPage(page);
		const start = performance.now();
		await input.setInputFiles(csv);
		await page.getByRole("button", { name: /^Save / }).waitFor();
		const seconds = (performance.now() - start) / 1000;
		// What is drawn late counts, too.
		await page.waitForTimeout(2000);
		const answering = await watch.stop();
		const most = memory.stop();
		return { ...answering, megabytes, rows, seconds, memory: before && most && { before, most } };
	} finally {
		await phone.close();
		await site.stop();
		rmSync(folder, { recursive: true, force: true });
	}
}

/** The process of the only page there is. */
async function rendererOf(page: Page): Promise<number> {
	const session = await page.context().browser()?.newBrowserCDPSession();
	if (!session) throw new Error("Chromium has no debugging session of its own");
	const { processInfo } = await session.send("SystemInfo.getProcessInfo");
	await session.detach();
	const renderers = processInfo.filter(({ type }) => type === "renderer");
	// A spare one waits for the next page: the busy one has worked more.
	return renderers.sort((a, b) => b.cpuTime - a.cpuTime)[0].id;
}

function memoryOf(processId: number): Memory | null {
	const file = `/proc/${processId}/smaps_rollup`;
	if (!existsSync(file)) return null;
	const text = readFileSync(file, "utf8");
	const kB = (name: string) => Number(new RegExp(`^${name}:\\s+(\\d+) kB`, "m").exec(text)?.[1] ?? 0);
	return { resident: kB("Rss") / 1000, own: (kB("Private_Clean") + kB("Private_Dirty")) / 1000 };
}

function watchMemory(processId: number): { stop(): Memory | null } {
	let most = memoryOf(processId);
	const timer = setInterval(() => {
		const now = memoryOf(processId);
		if (!most || !now) return;
		most = { resident: Math.max(most.resident, now.resident), own: Math.max(most.own, now.own) };
	}, sampleEveryMs);
	return {
		stop() {
			clearInterval(timer);
			return most;
		},
	};
}
