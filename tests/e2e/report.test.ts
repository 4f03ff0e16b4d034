/** A report made on one phone, and twenty opened on another: who is outside, what is mangled, and one that is kept. */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { parseReport } from "../../src/store/report";
import { measuredCar, reportText } from "../helpers/reports";
import { axe, newFolder, openPhone, type Phone } from "./harness";
import { openSite, type Site } from "./site";

const folder = newFolder();
const inFolder = (name: string) => join(folder.path, name);
const now = Date.now();
let site: Site;
let owner: Phone;
let tuner: Phone;
const errors: string[] = [];

beforeAll(async () => {
	site = await openSite(inject("dist"));
	owner = await openPhone(inFolder("owner"));
	tuner = await openPhone(inFolder("tuner"));
	for (const { page } of [owner, tuner]) {
		page.setDefaultTimeout(60_000);
		page.on("pageerror", (error) => errors.push(error.message));
		page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
	}
});
afterAll(async () => {
	await owner?.close();
	await tuner?.close();
	await site?.stop();
	folder.remove();
});

const reported = () => inFolder("report.txt");

test("the owner's report stands on a page, prints black on white without the app around it, and is saved as a file", async () => {
	const { page } = owner;
	writeFileSync(inFolder("log.json"), formatLog(measuredCar("mine", "The grey one", 0.45, 1, now)));
	await page.goto(`${site.origin}/#/setup`);
	await page.locator('input[type="file"]').setInputFiles(inFolder("log.json"));
	await page.getByRole("heading", { name: /^Boost/ }).waitFor();
	await page.goto(`${site.origin}/#/report`);
	await page.getByText(/% of the fuel now in the tank/).waitFor();
	expect(await axe(page)).toEqual([]);
	const [download] = await Promise.all([
		page.waitForEvent("download"),
		page.getByRole("button", { name: "Save as a file" }).click(),
	]);
	await download.saveAs(reported());
	expect(parseReport(readFileSync(reported(), "utf8"))).toMatchObject({ ok: true, value: { note: { app: "0.1.0" } } });
	const [picture] = await Promise.all([
		page.waitForEvent("download"),
		page.getByRole("button", { name: "Save as a picture" }).click(),
	]);
	expect(picture.suggestedFilename()).toMatch(/^heeltap-report-the-grey-one-.*\.png$/);

	await page.emulateMedia({ media: "print", colorScheme: "dark" });
	for (const around of [".top", ".tabs", "main button"])
		expect(await page.locator(around).first().isVisible()).toBe(false);
	const inks = await page.evaluate(() =>
		["body", ".report", ".report p"].map((what) => {
			const { color, backgroundColor } = getComputedStyle(document.querySelector(what) as Element);
			return [color, backgroundColor];
		}),
	);
	expect(inks.map(([color]) => color)).toEqual(Array(3).fill("rgb(0, 0, 0)"));
	expect(inks[1]?.[1]).toBe("rgb(255, 255, 255)");
	await page.emulateMedia({ media: null, colorScheme: null });
	for (const format of ["A4", "Letter"]) {
		const pages = (await page.pdf({ format })).toString("latin1").match(/\/Type\s*\/Page\b/g);
		expect(pages?.length).toBeLessThanOrEqual(2);
	}
});

test("of twenty reports the tuner sees at a glance which cars are outside, and which file is mangled", async () => {
	const { page } = tuner;
	const files = [reported()];
	for (let i = 0; i < 18; i++) {
		const content = i === 4 ? 0.2 : i === 11 ? 0.42 : 0.3;
		const log = measuredCar(`car ${i}`, `Customer ${i + 1}`, content, i === 7 ? 30 : 2, now);
		files.push(inFolder(`${i}.txt`));
		writeFileSync(inFolder(`${i}.txt`), reportText(log, new Date(now).toISOString()));
	}
	writeFileSync(inFolder("mangled.txt"), readFileSync(reported(), "utf8").slice(0, 900));
	await page.goto(`${site.origin}/#/reports`);
	await page.locator('input[type="file"][multiple]').setInputFiles([...files, inFolder("mangled.txt")]);
	await page.getByText("3 of 19 cars over a limit, or with entries that contradict each other.").waitFor();
	await page.getByText(/^mangled\.txt: line \d+, column \d+: /).waitFor();
	const names = await page.locator(".carrow .name").allTextContents();
	expect(names.slice(0, 3).sort()).toEqual(["Customer 12", "Customer 5", "The grey one"]);
	expect(names[3]).toBe("Customer 8");
	expect(names).toHaveLength(19);
	expect(await axe(page)).toEqual([]);
});

test("their own entries bear the reports out, and one is kept and watched", async () => {
	const { page } = tuner;
	await page.getByText(/still to be held against/).waitFor({ state: "detached", timeout: 110_000 });
	expect(await page.getByText(/Held against its entries: they come to the same/).count()).toBe(19);
	await page.getByRole("button", { name: "Keep The grey one" }).click();
	await page.getByText("Kept", { exact: true }).waitFor();
	await page.goto(`${site.origin}/#/cars`);
	const row = page.getByRole("listitem").filter({ hasText: "The grey one" });
	await row.getByText("Likely outside the window").waitFor();
	expect(await page.locator(".carrow").count()).toBe(1);
	expect(await axe(page)).toEqual([]);
	await page.getByRole("button", { name: "The grey one", exact: true }).click();
	await page.getByRole("heading", { name: "Boost: no" }).waitFor();
	expect(errors).toEqual([]);
	expect([...owner.leaks(site.origin), ...tuner.leaks(site.origin)]).toEqual([]);
});
