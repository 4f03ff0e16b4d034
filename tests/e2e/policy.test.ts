/** The built app under its own policy, with a log whose every name is hostile, on the narrowest phone. */
import { cpSync, mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, inject, test } from "vitest";
import { framed } from "../../src/share/frame";
import { foundIn } from "../../src/share/link";
import { packed } from "../../src/share/pack";
import { packedPart, partOf } from "../../src/share/part";
import { linksOf } from "../../src/share/sequence";
import { formatLog } from "../../src/store/backup";
import { hostileLog, hostileNames } from "../helpers/hostileNames";
import { csvOf } from "../helpers/logCsv";
import { newFolder, openPhone, type Phone, untilOffline } from "./harness";
import { openSite, type Site } from "./site";

const folder = newFolder();
let site: Site;
let stranger: Site;
let phone: Phone;
let page: Page;
const errors: string[] = [];
const log = hostileLog();
/** Of the narrowest phone, CSS pixels. */
const width = 320;

beforeAll(async () => {
	site = await openSite(inject("dist"));
	const elsewhere = join(folder.path, "elsewhere");
	mkdirSync(elsewhere);
	writeFileSync(join(elsewhere, "index.html"), `<!doctype html><iframe src="${site.origin}/"></iframe>`);
	cpSync(join(inject("dist"), "icon.svg"), join(elsewhere, "picture.svg"));
	stranger = await openSite(elsewhere);
	phone = await openPhone(join(folder.path, "profile"));
	page = phone.page;
	page.setDefaultTimeout(30_000);
	page.on("pageerror", (error) => errors.push(error.message));
	page.on("console", (message) => message.type() === "error" && errors.push(message.text()));
	await page.setViewportSize({ width, height: 700 });
	const file = join(folder.path, "log.json");
	writeFileSync(file, formatLog(log));
	await page.goto(`${site.origin}/#/setup`);
	await page.locator('input[type="file"]').setInputFiles(file);
	const [taken, refused] = [page.getByRole("heading", { name: /^Boost/ }), page.getByRole("alert")];
	await taken.or(refused).first().waitFor({ timeout: 100_000 });
	expect(await refused.filter({ hasText: "Nothing was changed" }).allTextContents()).toEqual([]);
	await untilOffline(page);
});
afterAll(async () => {
	await phone.close();
	await site.stop();
	await stranger.stop();
	folder.remove();
});

/** Every address of the app, with what tells that its screen is there. */
function screens(): [address: string, mark: string][] {
	const id = (text: string) => encodeURIComponent(text);
	return [
		["tank", ".verdict"],
		["fill", ".keypad"],
		["plan", "main section"],
		["log", 'main a[href^="#/entry"]'],
		["car", 'main a[href="#/calibration"]'],
		["costs", "main section"],
		["places", "main h2"],
		["table", "main h2"],
		["engine", "main .withunit"],
		["measure", 'main a[href="#/measure/tube"]'],
		...["analyser", "tube", "reported", "trim", "gauge"].map((kind): [string, string] => [
			`measure/${kind}`,
			"main form, main input",
		]),
		["datalog", 'main input[type="file"]'],
		["setup", 'main input[type="file"]'],
		["card", "main form"],
		...hostileNames.map((name): [string, string] => [`card/${hostileCard(name)}`, "main dl"]),
		["report", "main .report"],
		["cars", "main .carrow"],
		["reports", 'main input[type="file"]'],
		["hand", "main svg.qr"],
		["take", 'main input[type="file"]'],
		[`take/${hostileStop()}`, "main ul.handed"],
		["calibration", 'main button[type="submit"]'],
		...log.car.calibrations.map((each): [string, string] => [
			`calibration/${id(each.id)}`,
			'main button[type="submit"]',
		]),
		...hostileNames.map((name): [string, string] => [`place/${id(name)}`, 'main a[href="#/places"]']),
		...log.events.flatMap(({ id, kind }, i) => {
			const entry: [string, string] = [`entry/${encodeURIComponent(id)}`, 'main section[aria-label="What it says"]'];
			const correction: [string, string] = [`correct/${encodeURIComponent(id)}`, ".keypad"];
			return [...(i % 4 < 2 ? [entry] : []), ...(kind === "fill" && i % 3 === 0 ? [correction] : [])];
		}),
	];
}

function hostileCard(name: string): string {
	const [notes, wayBack] = [name, name];
	return framed("card", packed({ name, calibratedFor: 0.3, window: [0.26, 0.34], notes, wayBack }));
}

/** New entries of the same car, with the same names. */
function hostileStop(): string {
	const events = log.events
		.slice(0, 5)
		.map((event) => ({ ...event, id: `${event.kind} anew ${event.id.slice(0, 40)}` }));
	const part = partOf({ ...log.car, name: hostileNames[1] }, events, { what: "all" });
	return foundIn(linksOf("", packedPart(part), 100_000)[0])[0].payload;
}

/** What is wrong with the screen as it stands, everything unfolded. */
async function wrongs(): Promise<string[]> {
	return page.evaluate((width) => {
		for (const details of document.querySelectorAll("details")) details.open = true;
		const made = [
			...document.querySelectorAll("heeltap-made, script:not([src]), main img, iframe, [onerror], [onclick]"),
		];
		// Wider content than the phone makes a mobile page as wide as itself: only places tell.
		const wide = [...document.querySelectorAll("body *")].filter((element) => {
			if (element.getBoundingClientRect().right <= width + 0.5) return false;
			for (let box = element.parentElement; box; box = box.parentElement)
				if (getComputedStyle(box).overflowX !== "visible") return false;
			return true;
		});
		const links = [...document.querySelectorAll("a")].filter((link) => !/^(https?|blob):/.test(link.protocol));
		return [
			...made.map((element) => `an element was made: ${element.outerHTML.slice(0, 80)}`),
			...wide.map((element) => `it reaches beyond the phone: ${element.outerHTML.slice(0, 80)}`),
			...links.map((link) => `a link leads to ${link.href}`),
			...("heeltapObeyed" in window ? ["a name was obeyed"] : []),
		];
	}, width);
}

test("no name of a hostile log makes an element, a link or a row wider than the phone, on any screen", {
	timeout: 600_000,
}, async () => {
	const found: string[] = [];
	for (const [address, mark] of screens()) {
		await page.evaluate((hash) => {
			location.hash = hash;
		}, `#/${address}`);
		await page.locator(mark).first().waitFor();
		found.push(...(await wrongs()).map((wrong) => `${address}: ${wrong}`));
	}
	expect(found).toEqual([]);
});

test("what is looked for would be found", async () => {
	await page.evaluate(() => {
		const wide = document.createElement("heeltap-made");
		wide.style.display = "block";
		wide.style.width = "400px";
		document.querySelector("main")?.append(wide, Object.assign(document.createElement("a"), { href: "javascript:1" }));
	});
	expect(await wrongs()).toEqual([
		expect.stringContaining("an element was made"),
		expect.stringContaining("it reaches beyond the phone: <heeltap-made"),
		"a link leads to javascript:1",
	]);
	await page.reload();
});

test("a hostile data log does no more", async () => {
	const file = join(folder.path, "<heeltap-made>.csv");
	const lines = csvOf({ seed: "hostile", trim: 0.05, seconds: 30 }).split("\n");
	const headers = hostileNames.map((name) => `"${name.replaceAll('"', '""')}"`);
	writeFileSync(
		file,
		lines.map((_, i) => (i === 0 ? ["Time (s)", ...headers].join() : `${i},${headers.join()}`)).join("\n") +
			"\n1,".repeat(3),
	);
	await page.goto(`${site.origin}/#/datalog`);
	await page.locator('input[type="file"]').setInputFiles(file);
	await page.getByRole("region", { name: "What is in the columns?" }).or(page.getByRole("alert")).first().waitFor();
	expect(await wrongs()).toEqual([]);
});

test("the file of a backup has a name that no system minds", async () => {
	await page.goto(`${site.origin}/#/car`);
	const [saved] = await Promise.all([
		page.waitForEvent("download"),
		page.getByRole("button", { name: "Save a backup" }).click(),
	]);
	expect(saved.suggestedFilename()).toMatch(/^heeltap-[\p{Letter}\p{Number}-]{1,40}-\d{4}-\d\d-\d\d\.json$/u);
});

test("under all this no breach of the policy was reported, no error logged, and nothing asked of any other host", () => {
	expect(site.breaches).toEqual([]);
	expect(errors).toEqual([]);
	expect(phone.leaks(site.origin)).toEqual([]);
});

/** Runs in the page as injected code would, out of the reach of the debugger's privileges; the name of the error, if any. */
function injected(code: string): Promise<string> {
	return page.evaluate(`(async () => {
		await new Promise((done) => setTimeout(done));
		const elsewhere = ${JSON.stringify(stranger.origin)};
		try { await (async () => { ${code} })(); } catch (error) { return error.name; }
		await new Promise((done) => setTimeout(done, 300));
		return "";
	})()`);
}

const thrown: readonly [what: string, code: string][] = [
	["text run as code", "(0, eval)('window.heeltapObeyed = 1')"],
	["a function made of text", "new Function('window.heeltapObeyed = 1')()"],
	["a timer of text", "setTimeout('window.heeltapObeyed = 1')"],
	["markup from text", "document.body.innerHTML += '<img src=x onerror=window.heeltapObeyed=1>'"],
	[
		"an inline script",
		"document.body.append(Object.assign(document.createElement('script'), { text: 'window.heeltapObeyed = 1' }))",
	],
	[
		"a script from elsewhere",
		"document.body.append(Object.assign(document.createElement('script'), { src: elsewhere + '/picture.svg' }))",
	],
	["a worker of text", "new Worker('data:text/javascript,postMessage(1)')"],
	["a worker that nobody vouches for", "new Worker(new URL('sw.js', location.href))"],
	["another service worker", "await navigator.serviceWorker.register('heeltap-log.schema.json')"],
	["a policy of its own", "trustedTypes.createPolicy('default', { createHTML: (text) => text })"],
	["the app's policy once more", "trustedTypes.createPolicy('heeltap', { createScriptURL: (text) => text })"],
	["a request elsewhere", "await fetch(elsewhere + '/picture.svg')"],
];

test.each(thrown)("injected code gets no further with %s", async (_what, code) => {
	expect(await injected(code)).toMatch(/^(TypeError|EvalError|SecurityError)$/);
});

const reported: readonly [what: string, code: string, directive: string][] = [
	[
		"a picture from elsewhere",
		"document.body.append(Object.assign(new Image(), { src: elsewhere + '/picture.svg' }))",
		"img-src",
	],
	[
		"a picture in its address",
		"document.body.append(Object.assign(new Image(), { src: 'data:image/svg+xml,<svg/>' }))",
		"img-src",
	],
	["a frame", "document.body.append(Object.assign(document.createElement('iframe'), { src: elsewhere }))", "frame-src"],
	["an inline style", "document.body.setAttribute('style', 'display: none')", "style-src-attr"],
	[
		"a style sheet of text",
		"document.head.append(Object.assign(document.createElement('style'), { textContent: '*{display:none}' }))",
		"style-src-elem",
	],
	[
		"a style sheet from elsewhere",
		"document.head.append(Object.assign(document.createElement('link'), { rel: 'stylesheet', href: elsewhere + '/x.css' }))",
		"style-src-elem",
	],
	[
		"another base",
		"document.head.append(Object.assign(document.createElement('base'), { href: elsewhere }))",
		"base-uri",
	],
	[
		"a form sent elsewhere",
		"const form = Object.assign(document.createElement('form'), { action: elsewhere }); document.body.append(form); form.submit()",
		"form-action",
	],
];

test.each(reported)("injected code gets no further with %s, and it is reported", async (_what, code, directive) => {
	site.breaches.splice(0);
	expect(await injected(code)).toBe("");
	await expect.poll(() => site.breaches.join(), { timeout: 20_000 }).toContain(`"effective-directive":"${directive}"`);
});

test("none of it was obeyed, and no other host was asked for anything", async () => {
	expect(await page.evaluate(() => "heeltapObeyed" in window)).toBe(false);
	expect(stranger.requests).toEqual([]);
});

test("no page of another host can frame the app", async () => {
	const other = await phone.context.newPage();
	await other.goto(`${stranger.origin}/`);
	await expect.poll(() => other.frames()[1]?.url(), { timeout: 20_000 }).toBe("chrome-error://chromewebdata/");
	await other.close();
});
