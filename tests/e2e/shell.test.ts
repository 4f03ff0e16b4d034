import { cpSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { axe, newFolder, openPhone, type Phone, untilOffline } from "./harness";
import { openSite, type Site } from "./site";

const profile = newFolder();
let site: Site;
let phone: Phone;

beforeAll(async () => {
	site = await openSite(inject("dist"));
	phone = await openPhone(profile.path);
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	profile.remove();
});

test("the app comes up, free of errors and of breaches of its own policy", async () => {
	const errors: string[] = [];
	phone.page.on("pageerror", (error) => errors.push(error.message));
	phone.page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
	await phone.page.goto(`${site.origin}/`);
	await phone.page.locator("main h2").first().waitFor();
	await untilOffline(phone.page);
	expect(errors).toEqual([]);
	expect(await axe(phone.page)).toEqual([]);
});

describe("A visit without the service worker", () => {
	const fresh = newFolder();
	let visitor: Phone;
	beforeAll(async () => {
		visitor = await openPhone(fresh.path, { serviceWorkers: "block" });
	});
	afterAll(async () => {
		await visitor.close();
		fresh.remove();
	});

	test("asks for some files until there is the form, and not for one of each piece of the code", async () => {
		const before = site.requests.length;
		await visitor.page.goto(`${site.origin}/`);
		await visitor.page.getByRole("button", { name: "Start the account" }).waitFor();
		const asked = site.requests.slice(before).filter((path) => /\.(js|css)$/.test(path));
		expect(asked.join()).toMatch(/start-.*js.*setup-.*js/);
		expect(asked.length, asked.join()).toBeLessThanOrEqual(24);
		expect(await visitor.page.getByRole("banner").count()).toBe(1);
	});

	test("begins in the colours that were chosen, before any code of the app has come", async () => {
		const { page } = visitor;
		const theme = () => page.evaluate(() => document.documentElement.dataset.theme);
		await page.emulateMedia({ colorScheme: "light" });
		await page.getByRole("button", { name: /^Look around/ }).click();
		await page.getByRole("heading", { name: /^Boost/ }).waitFor();
		await page.goto(`${site.origin}/#/car`);
		await page.getByRole("radio", { name: "Dark" }).click();
		await page.reload();
		await expect.poll(() => page.evaluate(() => localStorage.getItem("heeltap-seen"))).toMatch(/"dark"/);
		await page.route(/start-.*\.js/, (route) => route.abort());
		await page.reload();
		await page.getByRole("heading", { name: "Heeltap" }).waitFor();
		expect(await theme()).toBe("dark");
		await page.evaluate(() => localStorage.clear());
		await page.reload();
		await page.getByRole("heading", { name: "Heeltap" }).waitFor();
		expect(await theme()).toBe("auto");
	});
});

test("the app can be installed", async () => {
	const session = await phone.context.newCDPSession(phone.page);
	const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
	const { errors } = await session.send("Page.getAppManifest");
	// Test browsers run in a private profile's clothes; nothing else may stand in the way.
	expect(installabilityErrors.filter(({ errorId }) => errorId !== "in-incognito")).toEqual([]);
	expect(errors).toEqual([]);
});

test("the app starts with the server gone, at once and after the browser was killed", async () => {
	await site.stop();
	await phone.page.reload();
	await phone.page.locator("main h2").first().waitFor();

	await phone.kill();
	phone = await openPhone(profile.path);
	await phone.page.goto(`${site.origin}/?from=home#/tank`);
	await phone.page.locator("main h2").first().waitFor();
	await site.start();
});

test("a path that is no file is the server's 404 and not the app", async () => {
	const response = await phone.page.goto(`${site.origin}/nowhere`);
	expect(response?.status()).toBe(404);
});

test("no request has left the origin", () => {
	expect(phone.requests.length).toBeGreaterThan(0);
	expect(phone.leaks(site.origin)).toEqual([]);
});

test("the app works in a folder of a host, too", async () => {
	const host = newFolder();
	cpSync(inject("dist"), join(host.path, "any/folder"), { recursive: true });
	const shared = await openSite(host.path);
	await phone.page.goto(`${shared.origin}/any/folder/`);
	await untilOffline(phone.page);
	await shared.stop();
	await phone.page.reload();
	await phone.page.locator("main h2").first().waitFor();
	host.remove();
});
