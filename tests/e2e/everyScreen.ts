/** Every screen of the app with the invented car, and what tells that it is there. */
import type { Page } from "playwright-core";
import { framed } from "../../src/share/frame";
import { packedInvitation } from "../../src/share/liveCode";
import { packed } from "../../src/share/pack";

const card = framed(
	"card",
	packed({
		name: "Street 30 %",
		calibratedFor: 0.3,
		window: [0.26, 0.34],
		notes: "Cold plugs.",
		wayBack: "Flash stock.",
	}),
);

const invitation = framed(
	"live",
	packedInvitation({
		server: "wss://cars.example/live",
		token: "abcdefghijklmnopqrstug",
		account: new Uint8Array(32),
		signer: new Uint8Array(32),
		seed: new Uint8Array(32),
		issued: 1_780_000_000,
		ends: null,
		signature: new Uint8Array(64),
	}),
);

const stop = "invented-stop-18-flex";

/** Mark by address. */
export const everyScreen: Readonly<Record<string, string>> = {
	tank: ".figures",
	fill: ".preview .line",
	plan: ".pours",
	log: 'main a[href^="#/entry"]',
	[`entry/${stop}`]: 'main h2:text-is("What it did")',
	"entry/invented-reading-1": 'main h2:text-is("What it did")',
	[`correct/${stop}`]: ".preview .line",
	car: 'main a[href="#/calibration"]',
	calibration: 'main button[type="submit"]',
	"calibration/invented-30": 'main button[type="submit"]',
	engine: "main .properties",
	measure: 'main a[href="#/measure/tube"]',
	"measure/analyser": 'main button[type="submit"]',
	"measure/tube": 'main button[type="submit"]',
	"measure/reported": 'main button[type="submit"]',
	"measure/trim": 'main button[type="submit"]',
	"measure/gauge": 'main input[type="range"]',
	datalog: 'main input[type="file"]',
	costs: ".coststops a",
	places: ".places svg",
	"place/Harbour": "main .dotplot",
	table: ".mixpicture text",
	why: 'main [aria-label="What already helps"]',
	doubt: "main h2",
	setup: 'main input[type="file"]',
	card: "main form",
	[`card/${card}`]: "main dl",
	take: 'main input[type="file"]',
	hand: "main svg.qr",
	live: 'main a[href="#/take"]',
	[`live/${invitation}`]: "main dl",
	report: "main h2",
	cars: "main h2",
	reports: "main h2",
};

/** Goes there as a link does, and waits until nothing more is to come. */
export async function show(page: Page, address: string): Promise<void> {
	await page.evaluate((hash) => {
		location.hash = hash;
	}, `#/${address}`);
	await page
		.locator(everyScreen[address] ?? "main")
		.first()
		.waitFor();
	await page.locator("main p:text-is('…'), main .soft.late").first().waitFor({ state: "hidden" });
	await page.evaluate(() => {
		for (const fold of document.querySelectorAll("details")) fold.open = true;
	});
}
