/** The way to live replication, for a driver who reads German. */
import { screen, waitFor } from "@testing-library/preact";
import { beforeAll, expect, test, vi } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import { wordsReady } from "../../src/app/words/language";
import type { LiveState } from "../../src/live/state";
import { framed } from "../../src/share/frame";
import { packedInvitation } from "../../src/share/liveCode";
import { aCar, aStart } from "../helpers/logs";
import { renderApp } from "./renderApp";

// Chosen before any code of the app runs, as on a phone.
vi.hoisted(() => localStorage.setItem("heeltap-language", "de"));
beforeAll(wordsReady);

const now = Date.parse("2026-06-10T12:00:00+02:00");
const server = `ws://${location.host}/live`;
const invitation = {
	server,
	token: "abcdefghijklmnopqrstug",
	account: new Uint8Array(32),
	signer: new Uint8Array(32),
	seed: new Uint8Array(32),
	issued: now / 1000,
	ends: now / 1000 + 86_400,
	signature: new Uint8Array(64),
};

test("an invitation is opened, switched on and off, and what went wrong is said", async () => {
	const states: LiveState[] = [];
	const offline: LiveState = {
		carId: "car",
		server,
		phase: "offline",
		waiting: 1,
		since: now,
		why: null,
		heard: null,
		news: null,
		refused: { damaged: 1, newer: 0, contradicting: 0, again: 0 },
		held: 0,
	};
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		live: async (ask) => {
			if (ask.do === "on") states.push(offline);
			if (ask.do === "off") states.splice(0);
			return { states: [...states], pairing: null };
		},
	});
	const log = { car: aCar({ name: "Der Graue" }), events: [aStart()] };
	const { user } = await renderApp({
		now,
		logs: [log],
		at: `#/live/${framed("live", packedInvitation(invitation))}`,
		wrap,
	});
	await screen.findByRole("heading", { name: "Eine Einladung, live zu gehen" });
	screen.getByText("11.06.2026");
	const on = screen.getByRole("button", { name: "Einschalten" });
	await waitFor(() => expect(on).toHaveProperty("disabled", false));
	await user.click(on);
	await screen.findByText("Der Server ist nicht zu erreichen. 1 Eintrag wartet und wird noch gesendet.");
	screen.getByText(/^1 Nachricht ließ sich nicht öffnen: beschädigt/);
	expect(screen.getAllByText("noch nie")).toHaveLength(2);
	await user.click(screen.getByText("Ausschalten"));
	await user.click(screen.getByRole("button", { name: "Auf diesem Gerät ausschalten" }));
	await waitFor(() => expect(location.hash).toBe("#/car"));
});
