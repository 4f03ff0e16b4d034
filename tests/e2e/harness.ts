import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import axeCore, { type Result } from "axe-core";
import { type BrowserContext, chromium, type Page } from "playwright-core";
import { chromiumFlags, findChromium } from "../../src/tools/browser.mjs";
import { openTrap } from "./trap";

export interface Phone {
	readonly context: BrowserContext;
	readonly page: Page;
	/** Every request of pages and workers so far, as addresses. */
	readonly requests: string[];
	/** Of the browser itself; all its other processes descend from it. */
	readonly processId: number;
	/** Requests that left `origin`; the promise of the app is that there is none. */
	leaks(origin: string): string[];
	/** Ends the browser as a crash or an empty battery does: nothing is flushed. The profile stays. */
	kill(): Promise<void>;
	close(): Promise<void>;
}

/** An empty folder. As the profile of a phone, opened twice in turn, it is the same phone. */
export function newFolder(): { path: string; remove(): void } {
	const path = mkdtempSync(join(tmpdir(), "heeltap-e2e-"));
	return { path, remove: () => rmSync(path, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 }) };
}

/** A Chromium of the size and touch of a phone. Whatever it wants from beyond localhost ends in a trap and is counted. */
export async function openPhone(
	profile: string,
	{ serviceWorkers = "allow" }: { readonly serviceWorkers?: "allow" | "block" } = {},
): Promise<Phone> {
	const trap = await openTrap();
	const executablePath = findChromium();
	if (!executablePath) throw new Error("the tests need a Chromium: run node src/tools/browser.mjs");
	const context = await chromium.launchPersistentContext(profile, {
		executablePath,
		args: [...chromiumFlags, `--proxy-server=http://127.0.0.1:${trap.port}`],
		viewport: { width: 390, height: 844 },
		deviceScaleFactor: 2,
		hasTouch: true,
		isMobile: true,
		reducedMotion: "reduce",
		serviceWorkers,
	});
	const requests: string[] = [];
	context.on("request", (request) => requests.push(request.url()));
	const processId = await browserProcess(context);
	const closed = new Promise<void>((done) => context.once("close", () => done()));

	return {
		context,
		page: context.pages()[0] ?? (await context.newPage()),
		requests,
		processId,
		leaks: (origin) => [
			...requests.filter((url) => /^(http|ws)/.test(url) && new URL(url).origin !== origin),
			...trap.hits,
		],
		async kill() {
			process.kill(processId, "SIGKILL");
			await closed;
			trap.close();
		},
		async close() {
			await context.close();
			trap.close();
		},
	};
}

/** Breaches of accessibility rules on the page as it is now, in words. */
export async function axe(page: Page): Promise<string[]> {
	// Sent over the debugging protocol, which the page's policy does not bind.
	await page.evaluate(axeCore.source);
	const results = await page.evaluate(async () => (window as unknown as { axe: typeof axeCore }).axe.run());
	return results.violations.map(inWords);
}

/** Slows the page down by `rate`. Workers are not slowed. */
export async function throttle(page: Page, rate: number): Promise<void> {
	const session = await page.context().newCDPSession(page);
	await session.send("Emulation.setCPUThrottlingRate", { rate });
}

/** Waits until the app is stored and starts without a network. */
export async function untilOffline(page: Page): Promise<void> {
	await page.evaluate(async () => {
		const { active } = await navigator.serviceWorker.ready;
		if (active && active.state !== "activated")
			await new Promise<void>((done) => {
				active.addEventListener("statechange", () => active.state === "activated" && done());
			});
	});
}

function inWords({ id, help, nodes }: Result): string {
	return `${id}: ${help} (${nodes.map((node) => node.target.join(" ")).join(", ")})`;
}

async function browserProcess(context: BrowserContext): Promise<number> {
	const session = await context.browser()?.newBrowserCDPSession();
	if (!session) throw new Error("Chromium has no debugging session of its own");
	const { processInfo } = await session.send("SystemInfo.getProcessInfo");
	await session.detach();
	const own = processInfo.find((process) => process.type === "browser");
	if (!own) throw new Error("Chromium does not tell its process");
	return own.id;
}
