/** Lighthouse on a phone: its own mobile settings, on the Chromium of the tests. */

import lighthouse from "lighthouse";
import { chromium } from "playwright-core";
import { chromiumFlags, findChromium } from "../../src/tools/browser.mjs";

export interface Audited {
	/** Out of a hundred, by category. */
	readonly scores: Readonly<Record<string, number>>;
	/** What takes from a score, in words. */
	readonly failures: readonly string[];
}

/** `profile`: a folder whose data the page is to find; what is there stays. */
export async function audited(address: string, profile: string): Promise<Audited> {
	const executablePath = findChromium();
	if (!executablePath) throw new Error("Lighthouse needs a Chromium: run node src/tools/browser.mjs");
	const port = 20_000 + (process.pid % 20_000);
	const context = await chromium.launchPersistentContext(profile, {
		executablePath,
		args: [...chromiumFlags, `--remote-debugging-port=${port}`],
	});
	try {
		const result = await lighthouse(address, { port, logLevel: "error", disableStorageReset: true });
		if (!result) throw new Error("Lighthouse gave no answer");
		const { categories, audits } = result.lhr;
		const weighed = Object.values(categories).flatMap(({ auditRefs }) => auditRefs.filter(({ weight }) => weight > 0));
		const failed = weighed.map(({ id }) => audits[id]).filter(({ score }) => score !== null && score < 1);
		return {
			scores: Object.fromEntries(
				Object.values(categories).map(({ id, score }) => [id, Math.round((score ?? 0) * 100)]),
			),
			failures: failed.map(({ id, title, displayValue }) => `${id}: ${title} ${displayValue ?? ""}`.trim()),
		};
	} finally {
		await context.close();
	}
}
