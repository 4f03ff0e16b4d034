/** The essential ways through the app on the built app, walked by one engine. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, inject, test, vi } from "vitest";
import { parseLog } from "../../src/store/backup";
import type { EngineMaker } from "./engine";
import { openWorld, type World } from "./world";

export function journeyIn(maker: EngineMaker): void {
	let world: World;
	let backup: string;
	beforeAll(async () => {
		world = await openWorld(maker, inject("dist"));
	});
	afterAll(() => world.close());

	test("a driver sets up a car, and the app is on the phone", async () => {
		const { engine, person, site } = world;
		await engine.go(`${site.origin}/`);
		await person.type("Name of the car", "The grey one");
		await person.tap("radio", "Litres");
		await person.type("Tank capacity, L", "58");
		await person.tap("radio", /^Gasoline E10/);
		await person.type("Made for, % ethanol", "30");
		expect(await person.breaches()).toEqual([]);
		await person.tap("button", "Start the account");
		await person.see("heading", /^Boost: no/);
		await person.untilOffline();
	});

	test("a stop of two products shows where it leads, and the tank's numbers after it is saved", async () => {
		const { engine, person } = world;
		const keysAt = () =>
			engine.run(() => {
				const keys = document.querySelector(".keypad");
				return keys && Math.round(keys.getBoundingClientRect().top + scrollY);
			});
		await person.tab("Fill");
		await person.see("group", "Keys for the amount");
		const keysWere = await keysAt();
		await person.tap("button", /^Gasoline E10/);
		await person.read(/^(No amount brings it inside|Inside the window)/);
		await person.tap("button", /^Flex fuel E85/);
		await person.press("12");
		expect(await person.read(/^After /)).toMatch(/about \d+/);
		expect(await keysAt(), "no key moves under the finger").toBe(keysWere);
		await person.tap("button", "A second product at this stop");
		await person.tap("button", /^Gasoline E10/);
		await person.press("36.5");
		await person.tap("button", "Filled to the first click?");
		await person.read(/^After .*about \d+/);
		expect(await person.breaches()).toEqual([]);
		await person.tap("button", "Save 12 L + 36.5 L");
		await person.read(/12 L of “Flex fuel E85 .US.” and 36.5 L of “Gasoline E10/);
		expect(await person.see("region", "Verdict")).toMatch(/Most likely about\d\d %9 in 10\d\d–\d\d %/);
		expect(await person.breaches()).toEqual([]);
	});

	test("a plan for the next stop says how much of each", async () => {
		const { person } = world;
		await person.tap("link", "What to pump");
		await person.see("button", /^Pump this/);
		expect(await person.breaches()).toEqual([]);
		await person.tap("button", /^Pump this/);
		expect(await person.see("heading", /^(First|Now): /)).toMatch(/\d L/);
		await person.tap("button", "Start this form over");
	});

	test("a stop is corrected, and the old entry stays as void", async () => {
		const { person } = world;
		await person.tab("Log");
		await person.tap("link", /12 L of “Flex fuel E85/);
		await person.see("heading", "What it did");
		await person.tap("link", "Correct this stop");
		await person.read(/^You are correcting/);
		await person.tap("button", "delete the last digit");
		await person.tap("button", "delete the last digit");
		await person.tap("button", /^Save 12 L \+ 36 L/);
		await person.tap("button", "Show void entries (1)");
		expect(await person.see("main", /^/)).toMatch(/12 L of “Flex fuel E85 .US.” and 36 L of/);
		expect(await person.breaches()).toEqual([]);
	});

	test("a reading says what it would do, and is in the account once it is saved", async () => {
		const { engine, person, site } = world;
		await engine.go(`${site.origin}/#/measure/analyser`);
		await person.type("It shows, % ethanol", "19");
		await person.read(/^(After|With) /);
		expect(await person.breaches()).toEqual([]);
		await person.tap("button", "Save it");
		await person.read(/19 %/);
	});

	test("a backup is a file with the whole log, and opening it again adds nothing", async () => {
		const { engine, person } = world;
		await person.tab("Car");
		await person.tap("button", "Save a backup");
		await person.read(/^Saved as heeltap-the-grey-one-/);
		backup = await untilDownloaded(engine.downloads);
		const log = parseLog(readFileSync(backup, "utf8"));
		expect(log.ok && log.value.events.map(({ kind }) => kind).sort()).toEqual(
			["calibration", "start", "fill", "fill", "void", "void", "fill", "fill", "reading"].sort(),
		);
		await engine.choose(backup);
		await person.read(/^The log of this car was joined: 0 new entries, 9 known already/);
	});

	test("without a server the app starts and takes a fill", async () => {
		const { engine, person, site } = world;
		await site.stop();
		await engine.go(`${site.origin}/#/fill`);
		await engine.reload();
		await person.tap("button", /^Gasoline E10/);
		await person.press("10");
		await person.read(/^After .*about \d+/);
		await person.tap("button", "Save 10 L");
		await person.read(/^Saved\./);
		await person.read(/10 L of “Gasoline E10/);
	});

	const outlives = "a killed browser comes back with the log and the half-typed form";
	if (maker.keepsData)
		test(outlives, async () => {
			await world.person.tab("Fill");
			await world.person.press("7.5");
			await world.person.read(/^After 7.5 L/);
			world = await world.restart();
			const { engine, person, site } = world;
			await engine.go(`${site.origin}/#/fill`);
			await person.see("button", "Save 7.5 L");
			await person.tab("Log");
			await person.see("link", /10 L of “Gasoline E10/);
			await person.see("link", /12 L of “Flex fuel E85 .US.” and 36 L/);
		});

	test("no error was logged, and no request has left the origin", async () => {
		const { engine, site } = world;
		// Chromium says of every look for an update that there was no server.
		const errors = (await engine.errors()).filter((text) => !/ERR_CONNECTION_REFUSED/.test(text));
		expect(errors).toEqual([]);
		expect(engine.leaks(site.origin)).toEqual([]);
	});

	test("an error and a request elsewhere would have been noticed", async () => {
		const { engine, site } = world;
		await engine.run(() => void setTimeout(() => Promise.reject(new Error("thrown on purpose"))));
		await engine.run(() => void Promise.resolve().then(() => console.error("logged on purpose")));
		await vi.waitFor(async () => {
			const errors = (await engine.errors()).join();
			expect(errors).toMatch(/logged on purpose/);
			expect(errors).toMatch(/thrown on purpose/);
		}, 10_000);
		await engine.go("http://elsewhere.example/").catch(() => {});
		expect(engine.leaks(site.origin).join()).toMatch(/elsewhere/);
	});
}

async function untilDownloaded(folder: string): Promise<string> {
	const deadline = Date.now() + 20_000;
	for (;;) {
		const file = readdirSync(folder).find((name) => name.endsWith(".json"));
		// Browsers make the file before they fill it.
		if (file && readFileSync(join(folder, file), "utf8").endsWith("}\n")) return join(folder, file);
		if (Date.now() > deadline) throw new Error(`no backup in ${folder}: ${readdirSync(folder)}`);
		await new Promise((done) => setTimeout(done, 50));
	}
}
