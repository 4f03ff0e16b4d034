import { fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import { emptyCard, readCardFields } from "../../src/app/cardForm";
import type { KeeperPort } from "../../src/app/keeperPort";
import { type Card, calibrationOf, packedCard, readCard } from "../../src/share/card";
import { framed } from "../../src/share/frame";
import { foundIn } from "../../src/share/link";
import { packed } from "../../src/share/pack";
import { aCalibration, aCar, aFlash, aStart } from "../helpers/logs";
import { renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T12:00:00+02:00");
const card = {
	name: "Stage 2, E30",
	calibratedFor: 0.3,
	window: [0.26, 0.33],
	leanBudget: 0.01,
	leanestLambda: 0.86,
	notes: "98 octane below 20 %.",
	wayBack: "Choose slot 1.",
	validUntil: "2026-12-31",
} as unknown as Card;
const linkOf = (card: Card) => `#/card/${framed("card", packedCard(card) ?? new Uint8Array())}`;
const logs = [{ car: aCar(), events: [aStart(), aFlash()] }];
const button = (name: string) => screen.getByRole("button", { name });
const field = (name: string | RegExp) => screen.getByRole("textbox", { name });

/** The card in the link that the screen shows. */
function shownCard(): unknown {
	const [found] = foundIn(document.querySelector(".linktext")?.textContent ?? "");
	const read = readCard(found.payload);
	return read.ok ? read.value : read.error;
}

test("a tuner without a car makes a card, which says what was typed", async () => {
	const app = await renderApp({ now });
	expect((await screen.findByRole("link", { name: /^I am a tuner: make/ })).getAttribute("href")).toBe("#/card");
	location.hash = "#/card";
	await screen.findByRole("heading", { name: "A calibration card" });
	await app.user.type(field("Made for, % ethanol"), "30");
	await app.user.clear(field("To, %"));
	await app.user.type(field("To, %"), "33");
	await app.user.type(field("Name of the calibration"), "Stage 2, E30");
	const lean = within(screen.getByRole("group", { name: /too much ethanol/ }));
	await app.user.click(lean.getByRole("radio", { name: "1 in 100" }));
	await app.user.type(field(/^Leanest lambda/), "0,86");
	await app.user.type(field("Notes for the driver"), "98 octane below 20 %.");
	await app.user.type(field("How to go back"), "Choose slot 1.");
	await app.user.click(button("Make the card"));
	await screen.findByRole("img", { name: /^QR code/ });
	const { validUntil: _, ...rest } = card;
	expect(shownCard()).toEqual(rest);
	expect(await app.store.cars()).toEqual([]);
	await app.user.click(button("Change the card"));
	expect(field("Notes for the driver")).toHaveProperty("value", "98 octane below 20 %.");
});

test("a card begins with a calibration of the car, and comes back half-typed after the app was killed", async () => {
	const app = await renderApp({ now, logs, at: "#/card" });
	await app.user.click(await screen.findByRole("radio", { name: "Stage 2, E30" }));
	await screen.findByDisplayValue("34");
	await app.user.type(field("Notes for the driver"), "Half");
	const again = await app.restart();
	await screen.findByDisplayValue("Half");
	await again.user.click(button("Make the card"));
	await screen.findByRole("img", { name: /^QR code/ });
	expect(shownCard()).toEqual({ name: "Stage 2, E30", calibratedFor: 0.3, window: [0.26, 0.34], notes: "Half" });
});

test("what does not fit a card is said beside its field, and no card is made", async () => {
	const app = await renderApp({ now, at: "#/card" });
	await app.user.type(await screen.findByRole("textbox", { name: "Made for, % ethanol" }), "30");
	await app.user.click(field("Notes for the driver"));
	await app.user.paste("x".repeat(201));
	await app.user.type(field(/^Leanest lambda/), "12");
	await app.user.click(button("Make the card"));
	screen.getByText("At most 200 characters fit on a card: shorten it.");
	screen.getByText(/between 0\.5–1\.5/);
	await waitFor(() => expect(document.activeElement).toBe(field(/^Leanest lambda/)));
	await app.user.clear(field(/^Leanest lambda/));
	await app.user.clear(field("Notes for the driver"));
	await app.user.paste("Ж".repeat(200));
	await app.user.click(button("Make the card"));
	await screen.findByText(/^The card is too large for a code by about \d+ letters/);
	expect(screen.queryByRole("img", { name: /^QR code/ })).toBeNull();
});

test("a card is shown whole and held against what is in force, and without “Keep” nothing is kept", async () => {
	const app = await renderApp({ now, logs, at: linkOf(card) });
	await screen.findByRole("heading", { name: "A card: “Stage 2, E30”" });
	for (const text of [
		"30 %",
		"26–33 %",
		"1 in 100",
		"1 in 20 (usual)",
		"0.86",
		"98 octane below 20 %.",
		"Choose slot 1.",
	])
		screen.getByText(text);
	screen.getByText(/^Window: now 26–34.%, on the card 26–33.%\.$/);
	screen.getByText(/^Accepted, too much ethanol: now 1 in 20 \(usual\), on the card 1 in 100\.$/);
	screen.getByText(/^Leanest lambda: on the card 0\.86, so far nothing is said of it\.$/);
	await app.user.click(screen.getByRole("link", { name: "Don’t keep it" }));
	expect(await app.store.cars()).toEqual([aCar()]);
	expect(await app.events()).toHaveLength(2);
});

test("a kept card is a calibration of the car; flashed only if that is said; the same one is not kept twice", async () => {
	const app = await renderApp({ now, logs, at: linkOf(card) });
	await app.user.click(await screen.findByRole("checkbox", { name: /^Note its leanest lambda/ }));
	await app.user.click(button("Keep"));
	await waitFor(() => expect(location.hash).toBe("#/car"));
	const [car] = await app.store.cars();
	expect(car.calibrations).toEqual([aCalibration(), calibrationOf(card)]);
	expect(car.fuelSystem).toBeUndefined();
	expect(await app.events()).toHaveLength(2);
	// The car had one of that name before.
	const [, entry] = await screen.findAllByRole("listitem", { name: card.name });
	const kept = within(entry);
	expect(kept.getByText(/^Notes:/).closest("p")?.textContent).toBe(`Notes: ${card.notes}`);
	expect(kept.getByText(/^How to go back:/).closest("p")?.textContent).toBe(`How to go back: ${card.wayBack}`);
	location.hash = linkOf(card);
	await screen.findByText(/^This card is kept already/);
	expect(screen.queryByRole("button", { name: "Keep" })).toBeNull();
});

test("a card that is flashed now is in force from now on, and its lambda goes to the fuel system", async () => {
	const app = await renderApp({ now, logs, at: linkOf(card) });
	await app.user.click(await screen.findByRole("checkbox", { name: /^It is flashed now/ }));
	await app.user.click(button("Keep"));
	await waitFor(() => expect(location.hash).toBe("#/car"));
	expect((await app.events()).at(-1)).toMatchObject({ kind: "calibration", calibration: calibrationOf(card).id });
	expect((await app.store.cars())[0].fuelSystem).toEqual({ leanestLambda: 0.86 });
});

test("a card that comes before any car leads to setting one up with it", async () => {
	const app = await renderApp({ now, at: linkOf(card) });
	await app.user.click(await screen.findByRole("button", { name: "Keep, and set up the car" }));
	await screen.findByRole("heading", { name: "From the card: “Stage 2, E30”" });
	expect(location.hash).toBe("#/setup");
	await app.user.type(field(/^Tank capacity/), "15");
	await app.user.click(button("Start the account"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	const [car] = await app.store.cars();
	expect(car.calibrations).toEqual([calibrationOf(card)]);
	expect((await app.events())[0]).toMatchObject({ kind: "calibration", calibration: calibrationOf(card).id });
});

const refused: readonly [what: string, hash: string, sentence: RegExp][] = [
	[
		"expired",
		linkOf({ ...card, validUntil: "2026-06-09" }),
		/^This card could be taken until Jun 9, 2026: .* Nothing was changed\.$/,
	],
	["mangled", `${linkOf(card).slice(0, -3)}xyz`, /^This is damaged, .* Nothing was changed\.$/],
	["cut short", linkOf(card).slice(0, -20), /^This is damaged, .* Nothing was changed\.$/],
	["foreign", `#/card/${framed("take", packed(card))}`, /^This is damaged, .* Nothing was changed\.$/],
];

test.each(refused)("a card that is %s gets a sentence, and nothing can be kept", async (_what, hash, sentence) => {
	const app = await renderApp({ now, logs, at: hash });
	expect((await screen.findByRole("alert")).textContent).toMatch(sentence);
	expect(screen.queryByRole("button", { name: /^Keep/ })).toBeNull();
	expect(await app.store.cars()).toEqual([aCar()]);
});

test.each(["2201-01-01", "12026-06-01"])("a day that no reader takes (%s) is refused beside its field", async (day) => {
	const app = await renderApp({ now, at: "#/card" });
	await app.user.type(await screen.findByRole("textbox", { name: "Made for, % ethanol" }), "30");
	const until = screen.getByLabelText("May be taken until");
	expect(until.getAttribute("max")).toBe("2200-12-31");
	fireEvent.change(until, { target: { value: day } });
	await app.user.click(button("Make the card"));
	await screen.findByText(/^A card can be taken until Dec 31, 2200 at the latest/);
	expect(screen.queryByRole("img", { name: /^QR code/ })).toBeNull();
});

test("a card that the reader itself refuses is none", () => {
	const calibration = { ...emptyCard.calibration, name: "Stage\u20662", madeFor: "30", from: "26", to: "33" };
	const read = readCardFields({ ...emptyCard, calibration, notes: "right\u202eleft" }, "2026-06-10");
	expect(read).toEqual({ ok: false, error: { card: expect.stringMatching(/^No app could read this card/) } });
});

test("what was typed comes back after “Begin with” was tapped by mistake", async () => {
	const app = await renderApp({ now, logs, at: "#/card" });
	await app.user.type(await screen.findByRole("textbox", { name: "Notes for the driver" }), "Half");
	await app.user.click(screen.getByRole("radio", { name: "An empty card" }));
	await waitFor(() => expect(field("Notes for the driver")).toHaveProperty("value", ""));
	await app.user.click(button("Undo"));
	await screen.findByDisplayValue("Half");
});

test("a card whose flash could not be written keeps its question until both are there", async () => {
	let full = true;
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		append: (...args) =>
			full ? Promise.reject(new DOMException("full", "QuotaExceededError")) : keeper.append(...args),
	});
	const app = await renderApp({ now, logs, at: linkOf(card), wrap });
	await app.user.click(await screen.findByRole("checkbox", { name: /^It is flashed now/ }));
	await app.user.click(button("Keep"));
	await screen.findByText(/^The card is kept, but not yet that it is flashed/);
	expect(location.hash).toBe(linkOf(card));
	full = false;
	await app.user.click(button("Keep"));
	await waitFor(() => expect(location.hash).toBe("#/car"));
	expect((await app.events()).at(-1)).toMatchObject({ kind: "calibration", calibration: calibrationOf(card).id });
	expect((await app.store.cars())[0].calibrations).toHaveLength(2);
});
