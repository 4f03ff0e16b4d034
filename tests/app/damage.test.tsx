import { screen, waitFor, within } from "@testing-library/preact";
import { afterEach, describe, expect, test } from "vitest";
import { watchOver } from "../../src/app/damageWatch";
import { backWords, damageWords, remedyWords } from "../../src/app/damageWords";
import type { KeeperPort } from "../../src/app/keeperPort";
import { formatLog } from "../../src/store/backup";
import type { CarDamage } from "../../src/store/damage";
import { aCar, aFill, aStart } from "../helpers/logs";
import { aPhone, type Phone, type Records } from "../helpers/phone";
import { type RenderedApp, renderApp } from "./renderApp";

const phones: Phone[] = [];
let serial = 0;

afterEach(() => {
	for (const phone of phones.splice(0)) phone.stop();
});

const events = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { value: 0.3, sd: 0.01 } }),
	aFill({ id: "f1", stop: "s1", at: "2026-05-02T12:00:00+02:00", litres: 10 }),
	aFill({ id: "f2", stop: "s2", at: "2026-05-09T12:00:00+02:00", litres: 8 }),
];

/** A phone on which a log was kept for some days. */
async function used(options: Parameters<typeof aPhone>[1] = {}): Promise<Phone & { readonly name: string }> {
	const name = `damaged ${++serial}`;
	const phone = aPhone(name, options);
	phones.push(phone);
	const { store, copy, witness } = await phone.start();
	await store.saveCar(aCar());
	await store.savePreference("settings", { activeCar: "car", units: { car: "gal" }, theme: "dark" });
	for (const event of events) await store.append("car", [event]);
	await copy();
	await witness();
	phone.stop();
	return { ...phone, name };
}

async function reopened(phone: Phone & { readonly name: string }, at = "#/tank", now?: number): Promise<RenderedApp> {
	const { keeper } = await phone.start();
	const port = keeper as unknown as KeeperPort;
	const app = await renderApp({ phone: phone.name, at, wrap: () => port, ...(now !== undefined && { now }) });
	const errors: unknown[] = [];
	const report = (error: unknown) => errors.push(error);
	await watchOver(app.model, port, () => phone.storage, report);
	expect(errors).toEqual([]);
	return app;
}

const notice = () => screen.findByRole("alert", { name: "Part of the log is missing on this phone" });
const noNotice = () => waitFor(() => expect(screen.queryByRole("alert", { name: /^Part of the log/ })).toBeNull());
const button = (name: string) => screen.getByRole("button", { name });
const without = (records: Records, ...ids: string[]): Records => ({
	...records,
	events: records.events.filter(([key]) => !ids.includes((key as string[])[1])),
});

test("missing entries are told of, and two taps bring them back, with what came back", async () => {
	const phone = await used();
	const before = await phone.records();
	await phone.put(without(before, "f1", "f2"));
	const app = await reopened(phone);
	within(await notice()).getByText(/The phone’s storage has lost something/);
	await app.user.click(button("See what is missing"));
	const shown = within(await notice());
	shown.getByText(/2 entries are missing/);
	shown.getByText("A second copy on this phone has all of it.");
	await waitFor(() => expect(document.activeElement?.textContent).toBe("Part of the log is missing on this phone"));
	await app.user.click(button("Bring everything back"));
	await screen.findByText("Back: 2 entries of “The grey one”.");
	await noNotice();
	expect((await phone.records()).events).toEqual(before.events);
	expect(app.model.state().account?.count).toBe(3);
});

test("after a wiped database the car, its entries and what was chosen come back, from above the form for a new car", async () => {
	const phone = await used();
	const before = await phone.records();
	await phone.put({ cars: [], events: [], heads: [], preferences: [] });
	const app = await reopened(phone);
	await screen.findByRole("textbox", { name: "Name of the car" });
	await notice();
	await app.user.click(button("See what is missing"));
	within(await notice()).getByText(/The car itself is missing\. 3 entries are missing\./);
	await app.user.click(button("Bring everything back"));
	await screen.findByText("Back: the car and 3 entries of “The grey one”.");
	await screen.findByRole("heading", { name: /^Boost/ });
	expect(app.model.state().settings).toMatchObject({ units: { car: "gal" }, theme: "dark" });
	const { cars, events, preferences } = await phone.records();
	expect({ cars, events, preferences }).toEqual({
		cars: before.cars,
		events: before.events,
		preferences: before.preferences,
	});
});

test("what was chosen meanwhile on the emptied phone does not stand in for what was chosen before", async () => {
	const phone = await used();
	await phone.put({ cars: [], events: [], heads: [], preferences: [] });
	const app = await reopened(phone);
	await notice();
	await app.model.saveSettings({ theme: "sun" });
	await app.user.click(button("See what is missing"));
	await app.user.click(button("Bring everything back"));
	await noNotice();
	expect(app.model.state().settings).toMatchObject({ units: { car: "gal" }, theme: "dark" });
});

test("without a second copy the app says what is missing, and a backup heals it", async () => {
	const phone = await used({ hasFiles: false });
	await phone.put(without(await phone.records(), "f2"));
	const app = await reopened(phone);
	await notice();
	await app.user.click(button("See what is missing"));
	const shown = within(await notice());
	shown.getByText(/1 entry is missing/);
	shown.getByText(/keeps no second copy/);
	expect(screen.queryByRole("button", { name: /^Bring/ })).toBeNull();
	const backup = new File([formatLog({ car: aCar(), events: events.slice(0, 2) })], "backup.json");
	await app.user.upload(shown.getByLabelText("Open a backup"), backup);
	await screen.findByText(/The log of this car was joined: 0 new entries/);
	// That one did not have it.
	await notice();
	const newer = new File([formatLog({ car: aCar(), events })], "backup.json");
	await app.user.upload(within(await notice()).getByLabelText("Open a backup"), newer);
	await noNotice();
	expect((await app.events()).map(({ id }) => id)).toEqual(["start", "f1", "f2"]);
});

test("what nobody has can be let go, and is not asked for again", async () => {
	const phone = await used({ hasFiles: false });
	await phone.put(without(await phone.records(), "f1"));
	const app = await reopened(phone);
	await notice();
	await app.user.click(button("See what is missing"));
	await app.user.click(button("Go on without it"));
	await screen.findByText(/1 entry could not be brought back/);
	await noNotice();
	await waitFor(() => expect(phone.remembered().car.count).toBe(2));
	expect(await phone.start().then(({ keeper }) => keeper.check(phone.remembered()))).toBeNull();
});

test("a phone on which all is well shows nothing, and the page remembers what it saved", async () => {
	const phone = await used();
	const app = await reopened(phone);
	await screen.findByRole("heading", { name: /^Boost/ });
	expect(screen.queryByRole("alert", { name: /missing|clock|Update/ })).toBeNull();
	await app.model.append([aFill({ id: "f3", stop: "s3", at: "2026-05-20T12:00:00+02:00" })]);
	await waitFor(() => expect(phone.remembered().car).toMatchObject({ count: 4, last: "f3", name: "The grey one" }));
});

describe("A clock that was set back by years", () => {
	test("is pointed out, and what is saved then is kept all the same", async () => {
		const phone = await used();
		const app = await reopened(phone, "#/fill", Date.parse("2019-01-01T12:00:00Z"));
		const alert = await screen.findByRole("alert", { name: "Is the phone’s clock right?" });
		expect(alert.textContent).toMatch(/2019.*newest entry is dated.*2026/);
		await screen.findByRole("textbox", { name: /^Amount/ });
		await app.user.click(screen.getByRole("button", { name: /^Gasoline E10/ }));
		await app.user.click(button("5"));
		await app.user.click(await screen.findByRole("button", { name: /^Save 5/ }));
		await waitFor(async () => expect(await app.events()).toHaveLength(4));
		expect((await app.events())[0].at).toMatch(/^2019/);
	});

	test("is not suspected for a day's journey through time zones", async () => {
		const phone = await used();
		await reopened(phone, "#/tank", Date.parse("2026-05-08T12:00:00Z"));
		await screen.findByRole("heading", { name: /^Boost/ });
		expect(screen.queryByRole("alert", { name: /clock/ })).toBeNull();
	});
});

test("entries of a newer version are kept, and the screen says to update the app", async () => {
	const phone = await used();
	const records = await phone.records();
	const newer = { id: "wash", kind: "wash", at: "2026-05-10T12:00:00Z", soap: { grams: 3 } };
	await phone.put({ ...records, events: [...records.events, [["car", "wash"], newer]], heads: [] });
	await reopened(phone);
	const alert = await screen.findByRole("alert", { name: "Update the app" });
	expect(alert.textContent).toMatch(/an entry that this one can’t read.*it does not count/);
	expect((await phone.records()).events.map(([, value]) => value)).toContainEqual(newer);
});

describe("The words", () => {
	const fine: CarDamage = {
		carId: "car",
		name: "The grey one",
		gone: false,
		returned: false,
		missing: 0,
		lost: 0,
		changed: 0,
		strays: 0,
		settings: false,
	};

	test("name everything that is wrong with a car", () => {
		expect(damageWords({ ...fine, missing: 1, changed: 2, strays: 1, settings: true })).toBe(
			"1 entry is missing. 2 entries no longer say what was saved. 1 entry belongs to another car. Its name, tank or calibrations are older than what was saved.",
		);
		expect(damageWords(fine)).toBe("Its entries are not those that were saved.");
		expect(damageWords({ ...fine, returned: true })).toMatch(/^It had been removed/);
	});

	test("promise no more than the second copy has", () => {
		expect(remedyWords(true, 5, 0)).toBe("A second copy on this phone has all of it.");
		expect(remedyWords(true, 5, 2)).toMatch(/^2 entries are nowhere on this phone.*has the rest/);
		expect(remedyWords(true, 2, 2)).toMatch(/^2 entries are nowhere on this phone/);
		expect(remedyWords(true, 2, 2)).not.toMatch(/second copy/);
	});

	test("say what came back and what did not", () => {
		expect(backWords([{ ...fine, missing: 5, lost: 1, settings: true }])).toBe(
			"Back: 4 entries and its settings of “The grey one”. 1 entry could not be brought back.",
		);
		expect(backWords([{ ...fine, returned: true }])).toBe("The log is in order again.");
	});
});
