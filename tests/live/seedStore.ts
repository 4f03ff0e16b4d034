/** Puts logs on a browser's disk by the app's own store, without its screens: nothing is previewed and reckoned on the way. */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { build } from "vite";
import type { openStore } from "../../src/store/store";
import type { Log } from "../../src/store/wire";

let bundled: Promise<string> | null = null;

async function storeCode(): Promise<string> {
	const built = await build({
		configFile: false,
		logLevel: "error",
		build: {
			lib: { entry: join(import.meta.dirname, "../../src/store/store.ts"), formats: ["iife"], name: "heeltapStore" },
			write: false,
			rolldownOptions: { output: { codeSplitting: false } },
		},
	});
	const [output] = Array.isArray(built) ? built : [built];
	if (!("output" in output)) throw new Error("the store must be one entry");
	return `${output.output[0].code}\nglobalThis.heeltapStore = heeltapStore;`;
}

/** `origin`: of the app, which is not to be open on this page. */
export async function seedStore(page: Page, origin: string, logs: readonly Log[]): Promise<void> {
	bundled ??= storeCode();
	await page.goto(`${origin}/heeltap-log.schema.json`);
	// Sent over the debugging protocol, which the page's policy does not bind.
	await page.evaluate(await bundled);
	await page.evaluate(async (logs) => {
		const { openStore: open } = (globalThis as unknown as { heeltapStore: { openStore: typeof openStore } })
			.heeltapStore;
		const store = await open();
		for (const log of logs) await store.merge(log);
		await store.savePreference("settings", { units: Object.fromEntries(logs.map(({ car }) => [car.id, "L"])) });
		store.close();
	}, logs as Log[]);
}
