/** The storage fails while a stop is saved: said in a sentence of its own, the entry stays, and saving works once the fault is gone. */
import { screen, waitFor } from "@testing-library/preact";
import { describe, expect, test } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import { StorageLostError } from "../../src/store/errors";
import { DuplicateIdError } from "../../src/store/store";
import { aCar, aFill, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const life = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({ id: "f1", stop: "s1", at: "2026-05-02T12:00:00+02:00", litres: 12 }),
];

const button = (name: string | RegExp) => screen.getByRole("button", { name });
const amount = () => screen.getByRole("textbox", { name: /^Amount/ }) as HTMLInputElement;

/** A phone that fails to save as long as `fault` holds an error. */
async function openFill(fault: { now: Error | null }) {
	const tries: string[][] = [];
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		async append(carId, events, options) {
			tries.push(events.map(({ id }) => id));
			if (!fault.now) return keeper.append(carId, events, options);
			// The storage was slow, not dead: what it was told to write arrives all the same.
			if (fault.now.message.includes("slow")) await keeper.append(carId, events, options);
			throw fault.now;
		},
	});
	const app = await renderApp({ at: "#/fill", logs: [{ car: aCar(), events: life }], wrap });
	await screen.findByRole("textbox", { name: /^Amount/ });
	return { app, tries };
}

async function typeAndSave(app: RenderedApp): Promise<void> {
	await app.user.click(button(/^Gasoline E10/));
	await app.user.click(button("7"));
	await app.user.click(button(/^Save 7/));
}

const fills = async (app: RenderedApp) => (await app.events()).filter(({ kind }) => kind === "fill").length;

describe.each([
	["full", /no room left, so nothing was saved: free some space/, false],
	["unwritten", /could not write, so nothing was saved; its storage may be full/, false],
	["lost", /lost hold of this app's storage/, true],
	["slow", /does not answer: wait a moment and try again/, true],
	["blocked", /Another tab holds an older version/, true],
] as const)("A storage that is %s", (reason, sentence, reload) => {
	test("is told of, the entry stays on the screen, and saving it again writes it once", async () => {
		const fault: { now: Error | null } = { now: new StorageLostError(reason) };
		const { app, tries } = await openFill(fault);
		await typeAndSave(app);
		const alert = await screen.findByText(sentence);
		expect(alert.closest("[role=alert]")).not.toBeNull();
		// Where nothing could be written, a reload would take what is typed along.
		expect(screen.queryByRole("button", { name: "Reload the app" }) !== null).toBe(reload);
		expect(location.hash).toBe("#/fill");
		expect(amount().value).toBe("7");
		expect(await fills(app)).toBe(reason === "slow" ? 2 : 1);

		fault.now = null;
		await app.user.click(button(/^Save 7/));
		await waitFor(() => expect(location.hash).toBe("#/tank"));
		expect(screen.queryByText(sentence)).toBeNull();
		expect(tries[1]).toEqual(tries[0]);
		expect(await fills(app)).toBe(2);
	});
});

test("An entry that was saved after all and then typed otherwise is not lost without a word", async () => {
	const fault: { now: Error | null } = { now: new StorageLostError("slow") };
	const { app } = await openFill(fault);
	await typeAndSave(app);
	await screen.findByText(/does not answer/);
	fault.now = null;
	for (const key of ["decimal", "5"]) await app.user.click(button(key));
	await app.user.click(button(/^Save 7.5/));
	await screen.findByText(/look at the log, and correct it there/);
	expect(amount().value).toBe("7.5");
	expect(new DuplicateIdError("event", "x").message).not.toContain("look at the log");
});

test("What was half typed and could not be written is tried again by itself, and is there after the app was killed", async () => {
	let tries = 0;
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		async saveDraft(key, value) {
			tries++;
			if (tries === 1) throw new StorageLostError("slow");
			return keeper.saveDraft(key, value);
		},
	});
	const app = await renderApp({ at: "#/fill", logs: [{ car: aCar(), events: life }], wrap });
	await screen.findByRole("textbox", { name: /^Amount/ });
	await app.user.click(button(/^Gasoline E10/));
	await screen.findByText(/does not answer/);
	await waitFor(() => expect(tries).toBe(2));
	await waitFor(() => expect(screen.queryByText(/does not answer/)).toBeNull());
	await app.restart();
	await waitFor(() => expect(button(/^Gasoline E10/).getAttribute("aria-pressed")).toBe("true"));
});

test("A choice that could not be written is not taken for chosen, though another car would come with it", async () => {
	let broken = false;
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		async savePreference(key, value) {
			if (broken) throw new StorageLostError("full");
			return keeper.savePreference(key, value);
		},
	});
	const other = { car: aCar({ id: "other", name: "The red one" }), events: [aStart({ id: "s2" })] };
	const app = await renderApp({ at: "#/cars", logs: [{ car: aCar(), events: life }, other], wrap });
	await app.model.saveSettings({ activeCar: "car" });
	broken = true;
	await app.model.saveSettings({ activeCar: "other" });
	expect(app.model.state().settings.activeCar).toBe("car");
	await screen.findByText(/no room left, so nothing was saved/);
	broken = false;
	await app.model.saveSettings({ theme: "dark" });
	expect(app.model.state().car?.id).toBe("car");
});
