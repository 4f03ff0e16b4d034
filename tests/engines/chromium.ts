import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { openPhone } from "../e2e/harness";
import type { Engine, EngineMaker } from "./engine";
import { killTree } from "./processes";

export const chromium: EngineMaker = {
	name: "Chromium",
	keepsData: true,
	served: (dist) => dist,
	async open(profile): Promise<Engine> {
		const phone = await openPhone(profile);
		const { page } = phone;
		const gone = new Promise((done) => phone.context.once("close", done));
		const downloads = join(profile, "downloads");
		mkdirSync(downloads, { recursive: true });
		const errors: string[] = [];
		page.on("pageerror", (error) => errors.push(error.message));
		page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
		page.on("download", (download) => download.saveAs(join(downloads, download.suggestedFilename())));
		return {
			go: async (url) => void (await page.goto(url)),
			reload: async () => void (await page.reload()),
			run: (work, ...args) => page.evaluate(`(${work})(...${JSON.stringify(args)})`),
			load: async (script) => void (await page.evaluate(`${script};0`)),
			tap: (x, y) => page.touchscreen.tap(x, y),
			type: (text) => page.keyboard.type(text),
			choose: (path) => page.locator('input[type="file"]').setInputFiles(path),
			downloads,
			errors: async () => errors,
			leaks: phone.leaks,
			processId: phone.processId,
			async kill() {
				killTree(phone.processId);
				await gone;
				await phone.close();
			},
			close: phone.close,
		};
	},
};
