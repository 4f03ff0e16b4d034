import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import { countingEvents, type FillEvent, type LogEvent } from "../../src/domain/event";
import { aCalibration, aCar } from "../helpers/logs";
import {
	e10,
	firstExplanation,
	flex,
	fuller,
	likeliest,
	openDoubt,
	start,
	tenfold,
	wrongProduct,
	wrongStart,
} from "./doubtScreen";
import type { RenderedApp } from "./renderApp";

const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const button = (name: string | RegExp) =>
	screen.getByRole("button", { name: typeof name === "string" ? (heard) => spaces(heard) === name : name });
const card = () => screen.findByRole("region", { name: "The last entries contradict each other" });
const settled = () => screen.findByRole("heading", { name: "The last entries go together" });

async function counting(app: RenderedApp): Promise<LogEvent[]> {
	return countingEvents(await app.events("car"));
}
async function fillsNow(app: RenderedApp): Promise<FillEvent[]> {
	return (await counting(app)).filter((event): event is FillEvent => event.kind === "fill");
}
/** Taps what settles the explanation that stands first. */
async function settle(app: RenderedApp, explained: RegExp, label: string): Promise<void> {
	const item = await firstExplanation();
	expect(spaces(within(item).getByRole("heading").textContent)).toMatch(explained);
	await app.user.click(within(item).getByRole("button", { name: (name) => spaces(name) === label }));
}

test("a contradiction is told on the Tank screen in the place of the warning, with what is likeliest and no plain yes", async () => {
	const wide = aCalibration({ window: [0.1, 0.9] });
	let answer = () => {};
	const waited = new Promise<void>((done) => {
		answer = done;
	});
	await openDoubt(wrongProduct, {
		at: "#/tank",
		logs: [{ car: aCar({ calibrations: [wide] }), events: wrongProduct }],
		wrap: (keeper): KeeperPort => ({
			...keeper,
			contradiction: (id) => waited.then(() => keeper.contradiction(id)),
		}),
	});
	// While it is being reckoned, the plain warning stands.
	await screen.findByRole("group", { name: "The last reading does not fit the account" });
	screen.getByRole("heading", { name: "Boost: yes" });
	answer();
	const words = spaces((await card()).textContent);
	expect(words).toMatch(/^NOTICE/);
	expect(words).toMatch(/The reading of 28 % on .+ disagrees with the account: a chance of less than 1 in 10,000\./);
	expect(words).toMatch(
		/Probably \(\d\d %\): The 25\.5 L of .+ were “Gasoline E10 \(US\)”, not “Flex fuel E85 \(US\)”\./,
	);
	expect(words).toMatch(/do not rely on the tank’s number: stay out of boost, and ask your tuner/);
	expect(screen.queryByText("The last reading does not fit the account")).toBeNull();
	screen.getByRole("heading", { name: "Boost: not now" });
	expect(screen.getByRole("link", { name: "Settle it" }).getAttribute("href")).toBe("#/doubt");
});

test("an account without a contradiction is not asked for one and says so", async () => {
	const refuse = () => Promise.reject(new Error("asked for nothing"));
	await openDoubt(wrongProduct.slice(0, 3), { wrap: (keeper): KeeperPort => ({ ...keeper, contradiction: refuse }) });
	await settled();
});

test("the three likeliest explanations are told with their weights, then that nothing is wrong, then the rest", async () => {
	await openDoubt(wrongProduct);
	await firstExplanation();
	const region = screen.getByRole("region", { name: "What may be behind it" });
	const told = within(region).getAllByRole("listitem");
	expect(told).toHaveLength(3);
	const weights = told.map((item) => Number(/(\d+) %/.exec(spaces(item.querySelector("strong")?.textContent))?.[1]));
	expect(weights).toEqual([...weights].sort((a, b) => b - a));
	expect(spaces(region.textContent)).toMatch(/Nothing is wrong: .+(\d+ %|1 in \d+).*All \d+ others together: \d+ %/);
	const entries = screen.getByRole("region", { name: "The entries in question" });
	const lines = within(entries)
		.getAllByRole("link")
		.map(({ textContent }) => spaces(textContent));
	expect(lines).toHaveLength(4);
	expect(lines[3]).toMatch(
		/The tank was measured by ethanol analyser: 28 %Disagrees: a chance of less than 1 in 10,000/,
	);
	screen.getByText(/takes one reading in 50 for rubbish/);
});

test("a product mistyped is corrected in a tap and a save, the contradiction is gone, and it can be undone", async () => {
	const app = await openDoubt(wrongProduct);
	await settle(app, /^1\. |^The 25\.5 L of .+ were “Gasoline E10/, "Correct it to “Gasoline E10 (US)”");
	await screen.findByText(/^You are correcting the stop of/);
	expect(button(/^Gasoline E10/).getAttribute("aria-pressed")).toBe("true");
	await app.user.click(button("Save 12 L + 25.5 L"));
	await settled();
	await waitFor(() => expect(location.hash).toBe("#/doubt"));
	const fills = (await fillsNow(app)).slice(2);
	expect(fills.map(({ product }) => product)).toEqual([flex, e10]);
	expect(fills.every(({ id }) => !["s2a", "s2b"].includes(id))).toBe(true);
	await app.user.click(screen.getByRole("link", { name: "Back to the tank" }));
	await screen.findByRole("heading", { name: "Boost: unknown" });
	expect(screen.queryByText("The last entries contradict each other")).toBeNull();
	await app.user.click(button("Undo"));
	await card();
});

test("a decimal point that slipped is put right with the amount filled in, even if the app is killed before it is saved", async () => {
	const app = await openDoubt(tenfold);
	await settle(app, /You poured 12 L of .+, not 1\.2 L: the decimal point slipped\./, "Correct it to 12 L");
	await screen.findByRole("button", { name: /^Save 12\sL \+ 25\.5\sL$/ });
	const again = await app.restart();
	await again.user.click(await screen.findByRole("button", { name: /^Save 12\sL \+ 25\.5\sL$/ }));
	await settled();
	expect((await fillsNow(again)).map(({ litres }) => litres)).toEqual([12, 28.5, 12, 25.5]);
});

test("what was typed into a correction before is not written over", async () => {
	const app = await openDoubt(tenfold, { at: "#/correct/s2a" });
	await app.user.click(await screen.findByRole("button", { name: "7" }));
	await app.restart();
	location.hash = "#/doubt";
	await settle(app, /You poured/, "Correct it to 12 L");
	await screen.findByText("Here is what you had begun to type.");
	await screen.findByRole("button", { name: /25\.57\sL/ });
});

test("the prefilled form of one explanation makes way for that of another, and the stop may be left as it was", async () => {
	const app = await openDoubt(tenfold);
	await settle(app, /You poured/, "Correct it to 12 L");
	await screen.findByRole("button", { name: /^Save 12\sL/ });
	location.hash = "#/doubt";
	await firstExplanation();
	const other = screen.getAllByRole("button", { name: /^Correct it to “/ })[0];
	await app.user.click(other);
	await screen.findByText(/^You are correcting the stop of/);
	expect(screen.queryByRole("button", { name: /^Save 12\sL \+ 25/ })).toBeNull();
	await app.user.click(button("Leave the stop as it was"));
	await firstExplanation();
	expect(await app.events("car")).toHaveLength(tenfold.length);
});

test("a reading that is wrong is taken back in one tap, or corrected and what is left is told", async () => {
	const app = await openDoubt(wrongProduct, { wrap: likeliest({ kind: "reading" }) });
	await settle(app, /^The reading of 28 % on .+ is wrong\.$/, "Take the reading back");
	await settled();
	expect((await counting(app)).map(({ id }) => id)).not.toContain("r");
	await app.user.click(button("Undo"));
	await settle(app, /^The reading/, "Correct the reading");
	expect(location.hash).toBe("#/doubt/r");
	const value = await screen.findByRole("textbox", { name: "Measured, % ethanol" });
	await app.user.clear(value);
	await app.user.type(value, "48");
	await app.user.click(button("Save the correction"));
	await settled();
	await waitFor(() => expect(location.hash).toBe("#/doubt"));
	expect((await counting(app)).at(-1)).toMatchObject({ kind: "reading", value: 0.48 });
});

test.each([
	["gauge", "s2a", /^The gauge noted on .+, 35 % of the tank, was misread/, "Take the gauge back", "gauge"],
	["click", "s2b", /^The nozzle clicked too early/, "Take the click back", "toClick"],
	["odometer", "s2a", /^The odometer of .+, 84400 km, is mistyped/, "Take the odometer back", "odometerKm"],
] as const)("a stop counts without its %s once that is taken back", async (kind, event, words, label, field) => {
	const app = await openDoubt(wrongProduct, { wrap: likeliest({ kind, event }) });
	await settle(app, words, label);
	await screen.findByText(/^The stop counts without its/);
	const [, , one, two] = await fillsNow(app);
	const { [field]: _, ...left } = { ...wrongProduct[event === "s2a" ? 3 : 4] } as Record<string, unknown>;
	const changed = event === "s2a" ? one : two;
	expect(changed).toMatchObject({ ...left, id: expect.any(String), stop: one.stop });
	expect(changed).not.toHaveProperty(field);
	expect(two.stop).toBe(one.stop);
	await app.user.click(button("Undo"));
	await waitFor(async () =>
		expect((await counting(app)).map(({ id }) => id)).toEqual(wrongProduct.map(({ id }) => id)),
	);
});

test("a stop corrected because its click came early is filled in without the click", async () => {
	const app = await openDoubt(wrongProduct, { wrap: likeliest({ kind: "click", event: "s2b" }) });
	await settle(app, /^The nozzle/, "Correct the stop");
	const click = await screen.findByRole("button", { name: /first click/ });
	expect(click.getAttribute("aria-pressed")).toBe("false");
});

test("amounts that were exchanged are exchanged back", async () => {
	const app = await openDoubt(wrongProduct, { wrap: likeliest({ kind: "exchange", event: "s1a" }) });
	await settle(
		app,
		/^The amounts of “Flex fuel E85 \(US\)” and “Gasoline E10 \(US\)” on .+ were exchanged\.$/,
		"Exchange the amounts",
	);
	await app.user.click(await screen.findByRole("button", { name: /^Save 28\.5\sL \+ 12\sL$/ }));
	await waitFor(() => expect(location.hash).toBe("#/doubt"));
	const told = (await fillsNow(app)).slice(0, 2).map(({ product, litres }) => [product.id, litres]);
	expect(told).toEqual([
		["flex-51-83", 28.5],
		["gasoline-e10", 12],
	]);
});

test("a fill that was never entered is asked for, of its product and before the entry", async () => {
	const app = await openDoubt(wrongProduct, { wrap: likeliest({ kind: "missing", event: "s2a" }) });
	await settle(app, /^A fill of “.+” before the stop of .+ was never entered\.$/, "Enter that fill");
	await screen.findByText(/^You are entering a stop that is missing/);
	expect(screen.queryByRole("link", { name: "How much of each?" })).toBeNull();
	await app.user.click(button("Leave the log as it was"));
	await settle(app, /never entered/, "Enter that fill");
	await screen.findByText(/^You are entering a stop that is missing/);
	await app.user.click(button("9"));
	await app.user.click(button("Save 9 L"));
	await waitFor(() => expect(location.hash).toBe("#/doubt"));
	const fills = await fillsNow(app);
	expect(fills.map(({ litres }) => litres)).toEqual([12, 28.5, 9, 12, 25.5]);
	expect(new Date(fills[2].at).toISOString().slice(0, 10)).toBe("2026-05-11");
	// The form of the stop being made now has nothing of it.
	expect(await app.store.draft("car/fill")).toBeUndefined();
});

test("a pump outside its label leads to a test of that pump", async () => {
	const app = await openDoubt(wrongProduct, { wrap: likeliest({ kind: "pump", event: "s2b" }) });
	await settle(
		app,
		/^What the pump gave as “Flex fuel E85 \(US\)” on .+ was far outside its label/,
		"Test the pump at Harbour",
	);
	await screen.findByRole("textbox", { name: "Lower layer after settling, mL" });
	expect(screen.getByRole("radio", { name: /^A pump/ })).toHaveProperty("checked", true);
	expect(button("Harbour").getAttribute("aria-pressed")).toBe("true");
	expect(button(/^Flex fuel E85/).getAttribute("aria-pressed")).toBe("true");
});

test("a gauge note that cannot be is taken back whole", async () => {
	const app = await openDoubt(fuller, { wrap: likeliest({ kind: "gauge", event: "g2" }) });
	await screen.findByText(/What was said of the level there is left out of the account/);
	await settle(app, /^The gauge note of 85 % on .+ was misread or mistyped\.$/, "Take the gauge note back");
	await settled();
	expect((await counting(app)).map(({ id }) => id)).toEqual(["start", "s1a", "s1b", "g1"]);
});

test("a gauge note counts without an odometer that is taken back", async () => {
	const app = await openDoubt(fuller, { wrap: likeliest({ kind: "odometer", event: "g2" }) });
	await settle(app, /^The odometer of .+, 84100 km, is mistyped\.$/, "Take the odometer back");
	await screen.findByText("The gauge note counts without its odometer.");
	const last = (await counting(app)).at(-1);
	expect(last).toMatchObject({ kind: "level", gauge: 0.85 });
	expect(last).not.toHaveProperty("odometerKm");
});

test("a start that was not what was said is corrected in its place", async () => {
	const app = await openDoubt(wrongStart, { wrap: likeliest({ kind: "start" }) });
	await settle(app, /^The tank did not hold at the start what was said, 10 % ± 1 %\.$/, "Correct the start");
	const value = await screen.findByRole("textbox", { name: "Measured, % ethanol" });
	await app.user.clear(value);
	await app.user.type(value, "30");
	await app.user.click(button("Save the correction"));
	await settled();
	expect((await counting(app))[0]).toMatchObject({ kind: "start", contents: { value: 0.3 }, gauge: start.gauge });
});

test("an entry that was called out leads from its own screen to what may be behind it", async () => {
	await openDoubt(wrongProduct, { at: "#/entry/r" });
	const link = await screen.findByRole("link", { name: "What may be behind it" });
	expect(link.getAttribute("href")).toBe("#/doubt");
});

test("amounts are told in the driver's own unit", async () => {
	const app = await openDoubt(tenfold);
	await app.model.saveSettings({ units: { car: "gal" } });
	await screen.findByRole("heading", { name: /You poured 3\.17\sgal .+, not 0\.317\sgal/ });
});
