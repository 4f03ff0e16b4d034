/** Lighthouse on a phone: its own mobile settings, on the Chromium of the tests. */

import lighthouse from "lighthouse";
import { chromium } from "playwright-core";
import { chromiumFlags, findChromium } from "../../src/tools/browser.mjs";

export interface Audited {
	/** Out of a hundred, by category. */
	readonly scores: Readonly<Record<string, number>>;
	/** What takes from a score, in words. */
	readonly failures: readonly string[];
	/** Lighthouse's measure of the machine; its phone is a desktop of 1500 or more, slowed four times. */
	readonly power: number;
}

/**
 * How much a machine of this power is to be slowed for the same phone: the table in Lighthouse's docs/throttling.md,
 * "Calibrating the CPU slowdown", mid-tier mobile.
 */
export function slowdownFor(power: number): number {
	if (power >= 1500) return 4;
	return power >= 800 ? 2 : 1;
}

/** `profile`: a folder whose data the page is to find; what is there stays. */
export async function audited(address: string, profile: string, slowdown: number): Promise<Audited> {
	const executablePath = findChromium();
	if (!executablePath) throw new Error("Lighthouse needs a Chromium: run node src/tools/browser.mjs");
	const port = 20_000 + (process.pid % 20_000);
	const context = await chromium.launchPersistentContext(profile, {
		executablePath,
		args: [...chromiumFlags, `--remote-debugging-port=${port}`],
	});
	try {
		const result = await lighthouse(address, {
			port,
			logLevel: "error",
			disableStorageReset: true,
			throttling: { cpuSlowdownMultiplier: slowdown },
		});
		if (!result) throw new Error("Lighthouse gave no answer");
		const { categories, audits } = result.lhr;
		const weighed = Object.values(categories).flatMap(({ auditRefs }) => auditRefs.filter(({ weight }) => weight > 0));
		const failed = weighed.map(({ id }) => audits[id]).filter(({ score }) => score !== null && score < 1);
		return {
			scores: Object.fromEntries(
				Object.values(categories).map(({ id, score }) => [id, Math.round((score ?? 0) * 100)]),
			),
			power: result.lhr.environment.benchmarkIndex,
			failures: failed.map(({ id, title, displayValue }) => `${id}: ${title} ${displayValue ?? ""}`.trim()),
		};
	} finally {
		await context.close();
	}
}
