/** Lighthouse's own rules, with its settings for phones, on a first visit and on a phone with a log. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { audited } from "../helpers/lighthouse";
import { aCar, aFill, aStart } from "../helpers/logs";
import { newFolder, openPhone, untilOffline } from "./harness";
import { openSite, type Site } from "./site";

const folder = newFolder();
let site: Site;

beforeAll(async () => {
	site = await openSite(inject("dist"));
});
afterAll(async () => {
	await site.stop();
	folder.remove();
});

const slump = 60;

/** Times differ from machine to machine: that score is the best of a few tries, and only a slump fails. */
async function scoresOf(address: string, profile: string) {
	let best = 0;
	for (let tries = 3; ; tries--) {
		const { scores, failures } = await audited(address, profile);
		best = Math.max(best, scores.performance);
		if (best >= slump || tries === 1) {
			console.log(`Lighthouse: ${JSON.stringify({ ...scores, performance: best })} ${failures.join("; ")}`);
			return { ...scores, performance: best, failures };
		}
	}
}

const full = { accessibility: 100, "best-practices": 100, seo: 100 };

test("a first visit scores a hundred", async () => {
	const { performance, ...others } = await scoresOf(`${site.origin}/`, join(folder.path, "new"));
	expect(others).toMatchObject(full);
	expect(performance).toBeGreaterThanOrEqual(slump);
});

test("so does the tank of a phone with a log", async () => {
	const profile = join(folder.path, "old");
	const phone = await openPhone(profile);
	const file = join(folder.path, "log.json");
	writeFileSync(file, formatLog({ car: aCar(), events: [aStart(), aFill()] }));
	await phone.page.goto(`${site.origin}/#/setup`);
	await phone.page.locator('input[type="file"]').setInputFiles(file);
	await phone.page.getByRole("heading", { name: /^Boost/ }).waitFor();
	await untilOffline(phone.page);
	await phone.close();
	const { performance, ...others } = await scoresOf(`${site.origin}/`, profile);
	expect(others).toMatchObject(full);
	expect(performance).toBeGreaterThanOrEqual(slump);
});
