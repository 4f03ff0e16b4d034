/** How well a page answers while it works. */
import type { CDPSession, Page } from "playwright-core";

export interface Answering {
	/** Longest task of the page's thread, ms; 0 where none passed 50 ms. On a busy machine it waits for others, too. */
	readonly longestTask: number;
	/** What the longest task kept a processor busy for, ms: the same on a busy machine. */
	readonly longestWork: number;
	/** Longest time between two pictures, ms. */
	readonly longestGap: number;
}

declare global {
	interface Window {
		heeltapWatch: { longestTask: number; longestGap: number; last: number };
	}
}

/** Watches from now on until it is stopped. */
export async function watchPage(page: Page): Promise<{ stop(): Promise<Answering> }> {
	const session = await page.context().newCDPSession(page);
	const work = await traceTasks(session);
	await page.evaluate(watch);
	return {
		async stop() {
			const { longestTask, longestGap } = await page.evaluate(() => window.heeltapWatch);
			const longestWork = await work.stop();
			await session.detach();
			return { longestTask, longestGap, longestWork };
		},
	};
}

/** An event of Chromium's trace; times in microseconds. */
interface TraceEvent {
	readonly name: string;
	readonly pid: number;
	readonly tid: number;
	readonly tdur?: number;
	readonly args?: { readonly name?: string };
}

async function traceTasks(session: CDPSession): Promise<{ stop(): Promise<number> }> {
	const mainThreads = new Set<string>();
	const longest = new Map<string, number>();
	session.on("Tracing.dataCollected", ({ value }) => {
		for (const { name, pid, tid, tdur = 0, args } of value as unknown as TraceEvent[]) {
			const thread = `${pid} ${tid}`;
			if (name === "thread_name" && args?.name === "CrRendererMain") mainThreads.add(thread);
			if (name.endsWith("RunTask")) longest.set(thread, Math.max(longest.get(thread) ?? 0, tdur));
		}
	});
	await session.send("Tracing.start", {
		transferMode: "ReportEvents",
		traceConfig: { includedCategories: ["toplevel", "__metadata"] },
	});
	return {
		async stop() {
			const complete = new Promise<void>((done) => session.once("Tracing.tracingComplete", () => done()));
			await session.send("Tracing.end");
			await complete;
			const works = [...mainThreads].map((thread) => longest.get(thread) ?? 0);
			if (Math.max(0, ...works) === 0) throw new Error("the trace holds no task of a page");
			return Math.max(...works) / 1000;
		},
	};
}

/** Runs in the page. */
function watch(): void {
	window.heeltapWatch = { longestTask: 0, longestGap: 0, last: performance.now() };
	const seen = window.heeltapWatch;
	new PerformanceObserver((list) => {
		for (const { duration } of list.getEntries()) seen.longestTask = Math.max(seen.longestTask, duration);
	}).observe({ type: "longtask" });
	const tick = () => {
		const now = performance.now();
		seen.longestGap = Math.max(seen.longestGap, now - seen.last);
		seen.last = now;
		requestAnimationFrame(tick);
	};
	requestAnimationFrame(tick);
}
