import { screen, waitFor } from "@testing-library/preact";
import { expect, test, vi } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { LiveAnswer, LiveAsk, LiveState } from "../../src/live/state";
import { framed } from "../../src/share/frame";
import { foundIn } from "../../src/share/link";
import { type Access, packedInvitation, packedPairing, readLiveCode } from "../../src/share/liveCode";
import { aCar, aStart } from "../helpers/logs";
import { renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T12:00:00+02:00");
const filled = (length: number, value: number) => new Uint8Array(length).fill(value);
const access: Access = {
	server: `ws://${location.host}/live`,
	token: "abcdefghijklmnopqrstug",
	account: filled(32, 1),
	signer: filled(32, 2),
	seed: filled(32, 3),
	issued: now / 1000 - 60,
	ends: null,
	signature: filled(64, 4),
};
const pairing = { access, key: filled(32, 5), carId: "other", carName: "The red one", until: now / 1000 + 3_600 };
const invited = (change: Partial<Access> = {}) =>
	`#/live/${framed("live", packedInvitation({ ...access, ...change }))}`;
const paired = (change: Partial<typeof pairing> = {}) =>
	`#/live/${framed("live", packedPairing({ ...pairing, ...change }))}`;
const log = { car: aCar(), events: [aStart()] };
const button = (name: string) => screen.getByRole("button", { name });

function aState(change: Partial<LiveState> = {}): LiveState {
	return {
		carId: "car",
		server: access.server,
		phase: "caughtUp",
		waiting: 0,
		since: null,
		why: null,
		heard: now,
		news: null,
		refused: { damaged: 0, newer: 0, contradicting: 0, again: 0 },
		held: 0,
		...change,
	};
}

/** A phone whose replication is played: what it was asked, and what it says. */
async function aPhone(at: string, states: LiveState[] = [], logs = [log]) {
	const asks: LiveAsk[] = [];
	const live = async (ask: LiveAsk): Promise<LiveAnswer> => {
		asks.push(ask);
		if (ask.do === "on") states.push(aState({ carId: ask.carId }));
		if (ask.do === "join") states.push(aState({ carId: ask.pairing.carId, phase: "taking" }));
		if (ask.do === "off") states.splice(0);
		const shown = ask.do === "pairing" ? { ...pairing, carId: ask.carId, carName: ask.carName } : null;
		return { states: [...states], pairing: shown };
	};
	const wrap = (keeper: KeeperPort): KeeperPort => ({ ...keeper, live });
	const phone = await renderApp({ now, logs, at, wrap });
	return { ...phone, asked: (what: LiveAsk["do"]) => asks.filter((ask) => ask.do === what) };
}

test("without it the screen says what it is and where to begin; the Car screen leads there", async () => {
	const { user } = await aPhone("#/car");
	await user.click(await screen.findByRole("link", { name: "Live, through a server of your own" }));
	await screen.findByText("“The grey one” is not live: its entries stay on this phone until you hand them over.");
	const link = screen.getByRole("link", { name: "Scan or open an invitation or a code" });
	expect(link.getAttribute("href")).toBe("#/take");
});

test("an invitation is shown, and nothing happens before “Switch on”", async () => {
	const { user, asked, model } = await aPhone(invited());
	await screen.findByRole("heading", { name: "An invitation to go live" });
	expect(screen.getByText(access.server)).toBeTruthy();
	expect(asked("on")).toEqual([]);
	expect(model.state().settings.live).toBeUndefined();
	await waitFor(() => expect(button("Switch on")).toHaveProperty("disabled", false));
	await user.click(button("Switch on"));
	await screen.findByText(/^Caught up:/);
	expect(asked("on")).toEqual([{ do: "on", carId: "car", access }]);
	expect(model.state().settings.live).toBe(true);
});

test("the code for the next phone appears when it is asked for, and holds the key", async () => {
	const { user } = await aPhone("#/live", [aState()]);
	await user.click(await screen.findByRole("button", { name: "Show the code" }));
	await screen.findByRole("img", { name: "QR code: Pairing code of “The grey one”" });
	const [found] = foundIn(document.querySelector(".linktext")?.textContent ?? "");
	expect(readLiveCode(found.payload)).toEqual({
		ok: true,
		value: { what: "pairing", pairing: { ...pairing, carId: "car", carName: "The grey one" } },
	});
});

test("another phone’s code is shown, and kept with “Keep” alone, on a phone without a car as well", async () => {
	const { user, asked } = await aPhone(paired(), [], []);
	await screen.findByRole("heading", { name: "“The red one” of another phone, live" });
	await screen.findByText("This car is new on this phone.");
	expect(asked("join")).toEqual([]);
	await waitFor(() => expect(button("Keep")).toHaveProperty("disabled", false));
	await user.click(button("Keep"));
	await screen.findByText("Taking what has come since…");
	expect(asked("join")).toEqual([{ do: "join", pairing }]);
});

test("an expired, mangled, newer or unreachable code gets a sentence, and nothing to tap that would keep it", async () => {
	const { asked } = await aPhone(invited({ ends: now / 1000 - 1 }));
	const says = async (hash: string, sentence: RegExp) => {
		location.hash = hash;
		await screen.findByText(sentence);
		expect(screen.queryByRole("button", { name: /^(Switch on|Keep)$/ })).toBeNull();
	};
	await screen.findByText(/^This invitation ended on Jun 10, 2026: .* Nothing was changed\.$/);
	await says(paired({ until: now / 1000 - 1 }), /^This code was made for one day, which is over/);
	await says(`${invited().slice(0, -4)}AAAA`, /^This is damaged, or only a part of it/);
	await says(`#/live/${framed("live", Uint8Array.from([7, 1, 2]))}`, /^This was made by a newer version of the app/);
	await says(
		invited({ server: "wss://elsewhere.example/live" }),
		/^This copy of the app may not go to wss:\/\/elsewhere\.example\/live/,
	);
	await says(paired({ access: { ...access, server: "wss://elsewhere.example" } }), /^This copy of the app may not go/);
	expect(asked("on")).toEqual([]);
	expect(asked("join")).toEqual([]);
});

test("how it stands is one sentence, with since when, and what was not taken", async () => {
	const states = [aState({ phase: "offline", waiting: 3, since: now - 3_600_000 })];
	await aPhone("#/live", states);
	await screen.findByText("The server can’t be reached. 3 entries wait to be sent, and will be.");
	screen.getByText("Offline since");
	const becomes = async (change: Partial<LiveState>, sentence: RegExp) => {
		states[0] = aState(change);
		await screen.findByText(sentence);
	};
	await becomes({ phase: "sending", waiting: 1 }, /^1 entry on the way/);
	await becomes(
		{ phase: "refused", why: "ended", since: now },
		/^The server refuses this phone: the invitation has ended/,
	);
	await becomes({ phase: "refused", why: "full", since: now }, /^The server has no more room for this car/);
	const refused = { damaged: 2, newer: 1, contradicting: 1, again: 4 };
	await becomes({ refused, held: 1 }, /^2 messages could not be opened/);
	screen.getByText(/^1 message of a newer version of the app/);
	screen.getByText(/^1 message would change what is here already/);
	screen.getByText(/^4 messages had come before/);
	screen.getByText(/^1 entry will be joined/);
});

test("switched off, the phone forgets, and nothing of it loads with the next start", async () => {
	const { user, asked, model } = await aPhone("#/live", [aState()]);
	await model.saveSettings({ live: true });
	await user.click(await screen.findByText("Switch off"));
	await user.click(button("Switch off on this phone"));
	await waitFor(() => expect(location.hash).toBe("#/car"));
	expect(asked("off")).toEqual([{ do: "off", carId: "car" }]);
	expect(model.state().settings.live).toBe(false);
});

test("a phone that can’t keep it says so, and it may be tried again", async () => {
	const told = vi.fn();
	vi.stubGlobal("reportError", told);
	const { user, model } = await aPhone(invited());
	await waitFor(() => expect(button("Switch on")).toHaveProperty("disabled", false));
	const { live } = model;
	model.live = async () => {
		throw new Error("full");
	};
	await user.click(button("Switch on"));
	await screen.findByText("The phone could not keep it. Try again.");
	expect(told).toHaveBeenCalled();
	model.live = live;
	await user.click(button("Switch on"));
	await screen.findByText(/^Caught up:/);
	vi.unstubAllGlobals();
});
