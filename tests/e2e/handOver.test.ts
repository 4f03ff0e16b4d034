/**
 * Two phones, each a browser profile of its own: a card made on one is scanned off its picture on the other and kept; a stop
 * comes back the same way; and both show the same numbers, to the last digit. What passes between them are pictures and files.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { aCar, aFill, aStart } from "../helpers/logs";
import { answerQuestion, figuresOf, shownOn } from "./account";
import { axe, newFolder, openPhone, type Phone, untilOffline } from "./harness";
import { openSite, type Site } from "./site";

const folder = newFolder();
let site: Site;
let tuner: Phone;
let driver: Phone;
const errors: string[] = [];
const inFolder = (name: string) => join(folder.path, name);

beforeAll(async () => {
	site = await openSite(inject("dist"));
	tuner = await openPhone(inFolder("tuner"));
	driver = await openPhone(inFolder("driver"));
	for (const { page } of [tuner, driver]) {
		page.setDefaultTimeout(60_000);
		page.on("pageerror", (error) => errors.push(error.message));
		page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
	}
});
afterAll(async () => {
	await tuner?.close();
	await driver?.close();
	await site?.stop();
	folder.remove();
});

const daysAgo = (days: number) => new Date(Date.now() - days * 86_400_000).toISOString();

/** The code on the screen as somebody else's camera would have it, in a file. */
async function photographed(page: Page, name: string): Promise<string> {
	const path = inFolder(name);
	const code = page.locator("svg.qr").first();
	// As a person holds the phone for it: the code in the middle, nothing before it.
	await code.evaluate((code) => {
		// Notes go by themselves, too: all at once, or one is gone while another is dismissed.
		for (const dismiss of document.querySelectorAll<HTMLElement>('.toast [aria-label^="Dismiss"]')) dismiss.click();
		code.scrollIntoView({ block: "center" });
	});
	await page.locator(".toast").first().waitFor({ state: "detached" });
	await code.screenshot({ path });
	return path;
}

/** Lets the other phone scan pictures. */
async function scan(page: Page, ...pictures: string[]): Promise<void> {
	await page.goto(`${site.origin}/#/take`);
	for (const picture of pictures) await page.locator('input[accept="image/*"]').setInputFiles(picture);
}

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name, exact: true });

test("a tuner without a car makes a card, and it fits a code", async () => {
	const { page } = tuner;
	await page.goto(`${site.origin}/`);
	await page.getByRole("link", { name: /^I am a tuner: make/ }).click();
	await page.getByRole("textbox", { name: "Made for, % ethanol" }).fill("30");
	await page.getByRole("textbox", { name: "To, %" }).fill("33");
	await page.getByRole("textbox", { name: "Name of the calibration" }).fill("Stage 2, E30");
	await page
		.getByRole("group", { name: /too much ethanol/ })
		.getByRole("radio", { name: "1 in 100" })
		.check();
	await page.getByRole("textbox", { name: /^Leanest lambda/ }).fill("0,86");
	await page.getByRole("textbox", { name: "Notes for the driver" }).fill("98 octane or better below 20 %. No towing.");
	await page.getByRole("textbox", { name: "How to go back" }).fill("Hold both buttons for ten seconds, choose slot 1.");
	expect(await axe(page)).toEqual([]);
	await button(page, "Make the card").click();
	await page.getByRole("img", { name: /^QR code/ }).waitFor();
	expect(await axe(page)).toEqual([]);
	await photographed(page, "card.png");
	const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Save it as a file").click()]);
	expect(download.suggestedFilename()).toBe("calibration-card.txt");
	await download.saveAs(inFolder("card.txt"));
	const [link] = /http\S+/.exec(readFileSync(inFolder("card.txt"), "utf8")) ?? [""];
	expect(link.length).toBeLessThanOrEqual(500);
});

test("the driver scans it off its picture, sees all of it, and nothing is kept without “Keep”", async () => {
	const { page } = driver;
	const stops = [20, 10].map((days) => aFill({ id: `f${days}`, stop: `s${days}`, at: daysAgo(days), litres: 12.5 }));
	const start = aStart({ at: daysAgo(40), contents: { range: [0.05, 0.1] } });
	writeFileSync(inFolder("log.json"), formatLog({ car: aCar(), events: [start, ...stops] }));
	await page.goto(`${site.origin}/#/take`);
	await page.locator('input[accept*="json"]').setInputFiles(inFolder("log.json"));
	await page.getByText("3 entries of “The grey one”, all new.").waitFor();
	expect(await axe(page)).toEqual([]);
	await button(page, "Keep").click();
	await page.getByRole("heading", { name: "Last change" }).waitFor();

	await scan(page, inFolder("card.png"));
	await page.getByRole("heading", { name: "A card: “Stage 2, E30”" }).waitFor();
	await page.getByText("26–33 %", { exact: true }).waitFor();
	await page.getByText("98 octane or better below 20 %. No towing.").waitFor();
	await page.getByText("Hold both buttons for ten seconds, choose slot 1.").waitFor();
	await page.getByText("Window: now 26–34 %, on the card 26–33 %.").waitFor();
	expect(await axe(page)).toEqual([]);
	await page.getByRole("link", { name: "Don’t keep it" }).click();
	await page.goto(`${site.origin}/#/car`);
	await page.getByRole("heading", { name: "Calibrations" }).waitFor();
	expect(await page.getByText("window 26–33 %").count()).toBe(0);

	await scan(page, inFolder("card.png"));
	await page.getByRole("checkbox", { name: /^It is flashed now/ }).check();
	await button(page, "Keep").click();
	await page.getByText("window 26–33 %").waitFor();
	await scan(page, inFolder("card.png"));
	await page.getByText(/^This card is kept already/).waitFor();
});

test("the owner takes the whole log in codes, in any order, over a restart", async () => {
	const { page } = driver;
	await page.goto(`${site.origin}/#/hand`);
	await page.getByRole("radio", { name: /^Everything/ }).check();
	const places = page.locator("section p strong").filter({ hasText: /^Code \d+ of \d+$/ });
	const count = Number(/of (\d+)/.exec((await places.textContent()) ?? "")?.[1]);
	expect(count).toBeGreaterThan(1);
	expect(await axe(page)).toEqual([]);
	const pictures: string[] = [];
	for (let place = 1; place <= count; place++) {
		await page.getByText(`Code ${place} of ${count}`, { exact: true }).waitFor();
		pictures.unshift(await photographed(page, `all-${place}.png`));
		await button(page, "Next code").click();
	}

	const [last, ...rest] = pictures;
	await scan(tuner.page, last);
	await tuner.page.getByText(`1 of ${count} codes are here.`).waitFor();
	await scan(tuner.page, last);
	await tuner.page.getByText("This code was here already.").waitFor();
	await untilOffline(tuner.page);
	await tuner.kill();
	tuner = await openPhone(inFolder("tuner"));
	tuner.page.setDefaultTimeout(60_000);
	tuner.page.on("pageerror", (error) => errors.push(error.message));
	await scan(tuner.page, ...rest);
	await tuner.page.getByText(/entries of “The grey one”, all new/).waitFor();
	await tuner.page.getByText("This car is new on this phone.").waitFor();
	await button(tuner.page, "Keep").click();
	await tuner.page.getByRole("heading", { name: "Last change" }).waitFor();
	expect(await shownOn(tuner.page, site.origin)).toEqual(await shownOn(driver.page, site.origin));
	expect(await figuresOf(tuner.page)).toEqual(await figuresOf(driver.page));
});

test("a stop comes back as the other lacks it, and both show the same numbers to the last digit", async () => {
	const { page } = driver;
	await page.goto(`${site.origin}/#/fill`);
	await page.getByRole("button", { name: /^Flex fuel E85/ }).click();
	for (const key of ["6", "decimal", "7"]) await button(page, key).click();
	await page.getByRole("button", { name: /^Save 6.7/ }).click();
	await answerQuestion(page);
	await shownOn(page, site.origin);
	const before = await figuresOf(tuner.page);
	expect(await figuresOf(page)).not.toEqual(before);

	// The owner's phone shows what it has, the driver's hands over what is lacking.
	await tuner.page.goto(`${site.origin}/#/take`);
	await tuner.page.getByText("Show what this phone has").click();
	await tuner.page.locator("svg.qr").waitFor();
	await scan(page, await photographed(tuner.page, "have.png"));
	await page.getByText("1 entry in 1 code.").or(page.getByText("1 entry in one code.")).first().waitFor();
	const stop = await photographed(page, "stop.png");

	await scan(tuner.page, stop);
	await tuner.page.getByText("1 entry of “The grey one”, all new.").waitFor();
	await tuner.page.locator("dd").filter({ hasText: "→" }).first().waitFor();
	expect(await figuresOf(tuner.page)).toEqual(before);
	expect(await axe(tuner.page)).toEqual([]);
	await button(tuner.page, "Keep").click();
	await tuner.page.getByRole("heading", { name: "Last change" }).waitFor();
	expect(await shownOn(tuner.page, site.origin)).toEqual(await shownOn(page, site.origin));
	const after = await figuresOf(tuner.page);
	expect(after).toEqual(await figuresOf(page));
	expect(after).not.toEqual(before);

	await scan(tuner.page, stop);
	await tuner.page.getByText("1 entry of “The grey one”, none of them new.").waitFor();
});

test("what is no code of ours is said to be none, and changes nothing", async () => {
	const { page } = driver;
	const before = await figuresOf(page);
	const blank = inFolder("blank.png");
	await page.goto(`${site.origin}/#/car`);
	await page.getByRole("heading").first().screenshot({ path: blank });
	await scan(page, blank);
	await page.getByText(/^No code was found in this picture/).waitFor();
	await page.locator('input[accept="image/*"]').setInputFiles(inFolder("card.txt"));
	await page.getByText(/^This file is no picture/).waitFor();
	await page.getByRole("textbox", { name: "Or paste a link" }).fill("https://elsewhere.example/#/cards/1");
	await button(page, "Open the link").click();
	await page.getByText(/^This is a link to elsewhere\.example, .* Nothing was changed\.$/).waitFor();
	const [link] = /http\S+/.exec(readFileSync(inFolder("card.txt"), "utf8")) ?? [""];
	await page.goto(`${link.slice(0, -6)}AAAAAA`);
	await page.getByText(/^This is damaged, .* Nothing was changed\.$/).waitFor();
	// No camera here: said, and no dead end.
	await page.goto(`${site.origin}/#/take`);
	await button(page, "Scan with the camera").click();
	await page.getByText(/^(This device has no camera|The camera)/).waitFor();
	await page.locator('input[accept*="json"]').setInputFiles(inFolder("card.txt"));
	await page.getByText(/^This card is kept already/).waitFor();
	expect(await figuresOf(page)).toEqual(before);
});

declare global {
	interface Window {
		heeltapFilm: MediaStream;
	}
}

test("the camera reads a code that is held before it, and is given back", async () => {
	const { page } = driver;
	await page.goto(`${site.origin}/#/take`);
	// No machine of tests has a camera: the film of a canvas, with the picture held a little askew in grey surroundings.
	await page.evaluate(
		async (base64) => {
			const bytes = Uint8Array.from(atob(base64), (character) => character.charCodeAt(0));
			const picture = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
			const canvas = Object.assign(document.createElement("canvas"), { width: 1280, height: 720 });
			const context = canvas.getContext("2d");
			setInterval(() => {
				context?.resetTransform();
				if (context) context.fillStyle = "#8a8f88";
				context?.fillRect(0, 0, 1280, 720);
				context?.rotate(0.05);
				context?.drawImage(picture, 330, 20, 620, 620);
			}, 50);
			window.heeltapFilm = canvas.captureStream(20);
			navigator.mediaDevices.getUserMedia = async () => window.heeltapFilm;
		},
		readFileSync(inFolder("card.png"), "base64"),
	);
	await button(page, "Scan with the camera").click();
	await page.getByText(/^This card is kept already/).waitFor();
	const states = () => page.evaluate(() => window.heeltapFilm.getTracks().map(({ readyState }) => readyState));
	await expect.poll(states, { timeout: 20_000 }).toEqual(["ended"]);
});

test("a file that another app shares waits for the page: a log, a card", async () => {
	const { page } = driver;
	await page.goto(`${site.origin}/#/tank`);
	await untilOffline(page);
	await page.reload();
	const shareWith = (name: string) =>
		page.evaluate(
			async ([text, name]) => {
				const form = new FormData();
				form.set("title", "shared");
				form.set("file", new File([text], name, { type: "text/plain" }));
				const { url } = await fetch("share", { method: "POST", body: form });
				return url;
			},
			[readFileSync(inFolder(name), "utf8"), name],
		);
	const address = await shareWith("log.json");
	await page.goto(`${site.origin}/#/take/file1`);
	await page.getByText("3 entries of “The grey one”, none of them new.").waitFor();
	expect(new URL(address).origin).toBe(site.origin);
	await shareWith("card.txt");
	await page.goto(`${site.origin}/#/take/file2`);
	await page.getByText(/^This card is kept already/).waitFor();
	await page.goto(`${site.origin}/#/take/file3`);
	await page.getByText(/^No file was handed to the app/).waitFor();
	const many = await page.evaluate(
		async ([text]) => {
			const form = new FormData();
			for (const name of ["one.json", "two.json"]) form.append("file", new File([text], name, { type: "text/plain" }));
			form.append("file", new File([], "empty.txt", { type: "text/plain" }));
			form.append("file", new File(["nothing"], "none.txt", { type: "text/plain" }));
			const { url } = await fetch("share", { method: "POST", body: form });
			return url;
		},
		[readFileSync(inFolder("log.json"), "utf8")],
	);
	expect(new URL(many).origin).toBe(site.origin);
	await page.goto(`${site.origin}/#/reports/file4`);
	await page.getByText(/2 reports of this car are here/).waitFor();
	for (const name of ["empty", "none"]) await page.getByText(new RegExp(`^${name}\\.txt: `)).waitFor();
});

test("all this asked nothing of any other host, broke no policy, and logged no error", () => {
	expect(site.breaches).toEqual([]);
	expect(errors).toEqual([]);
	expect([...tuner.leaks(site.origin), ...driver.leaks(site.origin)]).toEqual([]);
	// No server ever sees a payload: it stands behind the #.
	expect(site.requests.filter((path) => /card|take|hand/.test(path) && !path.startsWith("/assets/"))).toEqual([]);
});
