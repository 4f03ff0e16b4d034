/**
 * 10,000 entries each way between two browsers, through the real server, while connections are cut and held and the server
 * is killed. Spread over 50 cars, and most of them taken back again: every entry that counts is reckoned on both phones, more
 * than once, and 20,000 of those take an hour. HEELTAP_LIVE_COUNTING=200 lets all of them count.
 */
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { findingsIn, keptBy, openWorld, pair, switchOn, type World } from "../browserPhones";
import { carLog, tellingWords } from "../carLogs";
import { seedStore } from "../seedStore";
import { makeTrouble } from "../trouble";

const cars = Number(process.env.HEELTAP_LIVE_CARS ?? 50);
const each = 200;
const counting = Number(process.env.HEELTAP_LIVE_COUNTING ?? 20);
const minute = 60_000;

let world: World;

beforeAll(async () => {
	world = await openWorld(inject("dist"));
});
afterAll(() => world?.close(), minute);

const numbers = Array.from({ length: cars }, (_, i) => i);
const total = async (page: Page) => Object.values((await keptBy(page)).ids).reduce((sum, ids) => sum + ids.length, 0);
/** Somebody looks at the app now and then. */
const look = (page: Page) => page.evaluate(() => window.dispatchEvent(new Event("online")));

test(`${cars * each} entries each way come to both phones, once, with the same numbers`, {
	timeout: 60 * minute,
}, async () => {
	const { site, server, cutter, first, second, url } = world;
	const [mine, theirs] = [
		numbers.map((i) => carLog(i, "first", each, counting)),
		numbers.map((i) => carLog(i, "second", each, counting)),
	];
	const began = Date.now();
	const after = () => `${((Date.now() - began) / minute).toFixed(1)} min`;
	for (const [{ page }, logs] of [
		[first, mine],
		[second, theirs],
	] as const) {
		await seedStore(page, site.origin, logs);
		await page.goto(`${site.origin}/`);
		await page.locator("main").waitFor();
	}
	// A page without the app has no icon.
	world.errors.length = 0;
	console.log(`${after()}: both have their own`);
	const trouble = makeTrouble(cutter, server, { seed: "10,000", everyMs: 6_000, kills: 1 });
	for (const i of numbers) {
		await chooseCar(first.page, site.origin, mine[i].car.name);
		await switchOn(first.page, server.invite({ url }).link);
		await pair(first.page, second.page);
	}
	console.log(`${after()}: all are live`);
	const whole = 2 * cars * each;
	for (let rest = 0; (await total(first.page)) < whole || (await total(second.page)) < whole; rest++) {
		expect(rest, `${await total(first.page)} and ${await total(second.page)} of ${whole}`).toBeLessThan(200);
		await first.page.waitForTimeout(10_000);
		for (const { page } of [first, second]) await look(page);
		if (rest % 6 === 5)
			console.log(`${after()}: ${await total(first.page)} and ${await total(second.page)} of ${whole}`);
	}
	await trouble.stop();
	console.log(`${after()}: all are there; ${JSON.stringify(trouble.done)}, ${cutter.cuts} connections cut`);

	const counts = (kept: Awaited<ReturnType<typeof keptBy>>) =>
		Object.values(kept.shown).filter((tank) => (tank as { readonly count?: number }).count === 2 * each).length;
	for (const { page } of [first, second])
		await expect.poll(async () => counts(await keptBy(page)), { timeout: 20 * minute, interval: 5_000 }).toBe(cars);
	console.log(`${after()}: all are reckoned`);
	const [one, two] = [await keptBy(first.page), await keptBy(second.page)];
	for (const i of numbers) {
		const ids = [...mine[i].events, ...theirs[i].events].map(({ id }) => id).sort();
		expect([...one.ids[mine[i].car.id]].sort()).toEqual(ids);
		expect([...two.ids[mine[i].car.id]].sort()).toEqual(ids);
	}
	expect(one.shown).toEqual(two.shown);
	const { messages, bytes } = await server.facts();
	console.log(`${messages} messages, ${bytes} bytes`);
	const sought = mine.flatMap(({ car, events }) => [car.id, ...events.slice(0, 3).map(({ id }) => id)]);
	expect(findingsIn(join(server.folder, "store"), [...tellingWords, ...sought])).toEqual([]);
	expect(world.errors).toEqual([]);
	expect(site.breaches).toEqual([]);
	expect([...first.leaks(site.origin), ...second.leaks(site.origin)]).toEqual([]);
});

async function chooseCar(page: Page, origin: string, name: string): Promise<void> {
	await page.goto(`${origin}/#/car`);
	// It is drawn anew before it is seen to be checked.
	await page.getByRole("radio", { name: new RegExp(`^${name}$`) }).evaluate((input: HTMLInputElement) => input.click());
	await page.getByRole("heading", { level: 1, name }).waitFor();
}
