/** Two browsers replicate through the real server, while the network is cut and the server killed. Long: `long/`. */

import { rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { axe } from "../e2e/harness";
import { button, findingsIn, keepLog, keptBy, openWorld, pair, plant, switchOn, type World } from "./browserPhones";
import { carLog, tellingWords, theCar } from "./carLogs";
import { makeTrouble } from "./trouble";

let world: World;

beforeAll(async () => {
	world = await openWorld(inject("dist"));
});
afterAll(() => world?.close());

const each = 10;

test("what two phones enter while the network is cut comes to both, once, with the same numbers", {
	timeout: 240_000,
}, async () => {
	const { site, server, cutter, first, second, url } = world;
	const [mine, theirs] = [carLog(1, "first", each), carLog(1, "second", each)];
	await keepLog(first.page, site, mine);
	await switchOn(first.page, server.invite({ url }).link);
	await first.page.getByText(/^Caught up/).waitFor();
	expect(await axe(first.page)).toEqual([]);
	await second.page.goto(`${site.origin}/`);
	await second.page.locator("main").waitFor();
	await pair(first.page, second.page);
	await second.page.getByText(/^Caught up/).waitFor();
	await expect.poll(async () => (await keptBy(second.page)).ids[mine.car.id]?.length).toBe(each);

	const trouble = makeTrouble(cutter, server, { seed: "short", everyMs: 900, kills: 1 });
	await keepLog(second.page, site, theirs);
	await new Promise((passed) => setTimeout(passed, 3_000));
	await trouble.stop();
	expect(Object.values(trouble.done).reduce((sum, count) => sum + count, 0)).toBeGreaterThan(3);
	for (const { page } of [first, second]) await page.evaluate(() => window.dispatchEvent(new Event("online")));
	await expect
		.poll(async () => (await keptBy(first.page)).ids[mine.car.id]?.length, { timeout: 30_000, interval: 300 })
		.toBe(2 * each);

	const ids = [...mine.events, ...theirs.events].map(({ id }) => id).sort();
	for (const { page } of [first, second]) {
		await page.goto(`${site.origin}/#/tank`);
		await expect
			.poll(async () => (await keptBy(page)).shown[mine.car.id], { timeout: 30_000 })
			.toMatchObject({ count: 2 * each });
		expect([...(await keptBy(page)).ids[mine.car.id]].sort()).toEqual(ids);
	}
	expect((await keptBy(first.page)).shown).toEqual((await keptBy(second.page)).shown);
	const found = findingsIn(join(server.folder, "store"), [...tellingWords, theCar(1).id, ...ids]);
	expect(found).toEqual([]);
	plant(join(server.folder, "store"), ids[3]);
	expect(findingsIn(join(server.folder, "store"), ids)).toHaveLength(1);
	rmSync(join(server.folder, "store", "planted"));
});

test("a server that is gone is said to be, with what waits, and switched off nothing is sent", async () => {
	const { first, cutter, site } = world;
	const { page } = first;
	cutter.shut(true);
	cutter.cut();
	await page.goto(`${site.origin}/#/live`);
	await page.getByText(/^The server can’t be reached\. Nothing waits/).waitFor();
	await page.getByText("Offline since").waitFor();
	cutter.shut(false);
	await page.evaluate(() => window.dispatchEvent(new Event("online")));
	await page.getByText(/^Caught up/).waitFor();
	await page.getByText("Switch off", { exact: true }).click();
	await button(page, "Switch off on this phone").click();
	await page.waitForURL(/#\/car$/);
	await page.goto(`${site.origin}/#/live`);
	await page.getByText(/is not live: its entries stay on this phone/).waitFor();
});

test("all this asked nothing of any other host, broke no policy, and logged no error", () => {
	const { site, first, second, errors } = world;
	expect(site.breaches).toEqual([]);
	expect(errors).toEqual([]);
	expect([...first.leaks(site.origin), ...second.leaks(site.origin)]).toEqual([]);
	expect(site.requests.filter((path) => /^\/live websocket/.test(path)).length).toBeGreaterThan(1);
});
