import { cpSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
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
	await phone.page.getByRole("heading").first().waitFor();
	await untilOffline(phone.page);
	expect(errors).toEqual([]);
	expect(await axe(phone.page)).toEqual([]);
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
	await phone.page.getByRole("heading").first().waitFor();

	await phone.kill();
	phone = await openPhone(profile.path);
	await phone.page.goto(`${site.origin}/?from=home#/tank`);
	await phone.page.getByRole("heading").first().waitFor();
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
	await phone.page.getByRole("heading").first().waitFor();
	host.remove();
});
