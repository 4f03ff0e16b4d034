/** Lighthouse's own rules, with its settings for phones, on a first visit and on a phone with a log. */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { audited, slowdownFor } from "../helpers/lighthouse";
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

/** A quiet machine gives 98 to 100, a busy one a few points less. */
const leastSpeed = 95;

/** Times differ from run to run, most of all where others use the machine: that score is the best of a few tries. */
async function scoresOf(address: string, profile: string) {
	// A busy moment makes a machine look weak: what it can do at its best counts.
	let power = 1500;
	for (let tries = 3, best = 0; ; tries--) {
		const slowdown = slowdownFor(power);
		const { scores, failures, power: seen } = await audited(address, profile, slowdown);
		console.log(
			`Lighthouse, power ${seen}, slowed ${slowdown} times: ${JSON.stringify(scores)} ${failures.join("; ")}`,
		);
		best = Math.max(best, scores.performance);
		if (best >= leastSpeed || tries === 1) return { ...scores, performance: best, failures };
		power = tries === 3 ? seen : Math.max(power, seen);
	}
}

const full = { accessibility: 100, "best-practices": 100, seo: 100 };

test("a first visit scores a hundred", async () => {
	const { performance, ...others } = await scoresOf(`${site.origin}/`, join(folder.path, "new"));
	expect(others).toMatchObject(full);
	expect(performance).toBeGreaterThanOrEqual(leastSpeed);
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
	expect(performance).toBeGreaterThanOrEqual(leastSpeed);
});
