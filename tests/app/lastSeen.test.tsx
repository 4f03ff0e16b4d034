import { screen, waitFor } from "@testing-library/preact";
import { beforeEach, expect, test } from "vitest";
import { seenOnThisDevice } from "../../src/app/lastSeen";
import { createModel } from "../../src/app/model";
import { keeperOf } from "../../src/keeper/keeper";
import { aCar, aFill, aStart } from "../helpers/logs";
import { renderApp } from "./renderApp";

const seen = () => seenOnThisDevice(() => localStorage);
const log = { car: aCar(), events: [aStart({ at: "2026-05-30T12:00:00+02:00", contents: { value: 0.3, sd: 0.01 } })] };

beforeEach(() => localStorage.clear());

test("the tank as last seen is there before the store has answered, and gone before anything is written", async () => {
	const app = await renderApp({ logs: [log], lastSeen: seen() });
	await screen.findByRole("heading", { name: "Boost: yes" });
	await waitFor(() => expect(seen().recall()?.car).toEqual(log.car));

	const { store } = app;
	const never = createModel(
		keeperOf(store) as never,
		() => "",
		() => {},
		seen(),
	);
	expect(never.state()).toMatchObject({ phase: "ready", car: log.car, account: null, now: { last: { id: "start" } } });

	const saving = app.model.append([aFill({ at: "2026-06-01T12:00:00Z" })]);
	expect(seen().recall()).toBeNull();
	await saving;
	expect(seen().recall()?.now.last.id).toBe("fill");
});

test("what was seen last gives way where the store knows better", async () => {
	const first = await renderApp({ logs: [log], lastSeen: seen() });
	await screen.findByRole("heading", { name: "Boost: yes" });
	// Behind the app's back, as a browser does that brings back an older page.
	await first.store.append("car", [aFill({ at: "2026-06-01T12:00:00Z", litres: 40 })]);
	await first.restart();
	await screen.findByRole("heading", { name: "Boost: no" });
});

test("another version's memory, or a barred store, is no memory", () => {
	localStorage.setItem("heeltap-seen", JSON.stringify({ version: "another", car: {} }));
	expect(seen().recall()).toBeNull();
	localStorage.setItem("heeltap-seen", "{");
	expect(seen().recall()).toBeNull();
	const barred = seenOnThisDevice(() => {
		throw new DOMException("barred", "SecurityError");
	});
	expect(barred.recall()).toBeNull();
	barred.forget();
	barred.note({} as never);
});
