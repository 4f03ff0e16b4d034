import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import { demoLog } from "../../src/app/demo";
import {
	aheadWords,
	deliveredRange,
	deliveredWords,
	knownWords,
	pointsWide,
	visitWords,
} from "../../src/app/placeWords";
import { aCar, aFill, aPumpReading, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-20T15:30:00Z");
const car = aCar({ currency: "EUR" });
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const life = [
	aStart({ at: "2026-06-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aPumpReading({ at: "2026-06-10T11:30:00+02:00", place: "Harbour", product: flex, value: 0.6, sd: 0.02 }),
	aFill({
		id: "f1",
		stop: "s1",
		at: "2026-06-10T12:00:00+02:00",
		product: flex,
		litres: 12,
		place: "Harbour",
		pricePerLitre: 1.2,
	}),
	aFill({ id: "f2", stop: "s1", at: "2026-06-10T12:01:00+02:00", product: e10, litres: 20, place: "Harbour" }),
	aFill({ id: "f3", stop: "s3", at: "2026-06-18T12:01:00+02:00", product: e10, litres: 20, place: "Mill Road" }),
	aFill({ id: "f4", stop: "s4", at: "2026-06-19T12:01:00+02:00", product: e10, litres: 9 }),
];

async function open(at: string, events: readonly unknown[] = life): Promise<RenderedApp> {
	return renderApp({ at, now, logs: [{ car, events: events as never }] });
}
const pump = async (name: string) => within(await screen.findByRole("region", { name }));

test("Places lists every named place, the last visited first, with what is known of each pump", async () => {
	const app = await open("#/places");
	const list = within(await screen.findByRole("region", { name: "Places" }));
	const links = await list.findAllByRole("link");
	expect(links.map((link) => spaces(link.textContent))).toEqual([
		expect.stringMatching(
			/^Mill RoadLast visit 2 days ago\. One fill, never tested\.Gasoline E10 .*: about 9\.5 %, 9 in 10: 9–10 %$/,
		),
		expect.stringMatching(
			/^HarbourLast visit 10 days ago\. 2 fills, one test\..*Flex fuel E85 .*: about 6\d %, 9 in 10: 5\d–6\d %/,
		),
	]);
	await app.user.click(links[1]);
	await waitFor(() => expect(location.hash).toBe("#/place/Harbour"));
	await screen.findByRole("region", { name: "Flex fuel E85 (US)" });
});

test("a tested pump shows its dots over the label, how much better it is known, and how that fades", async () => {
	await open("#/place/Harbour");
	const flexPump = await pump("Flex fuel E85 (US)");
	flexPump.getByRole("img", { name: /^Twenty equally likely .* of them lie inside the label of 51–83.%/ });
	flexPump.getByText(/^label 51–83.%$/);
	const known = spaces(flexPump.getByText(/^Tested once, 10 days ago/).textContent);
	const [now, label] = (/9 in 10 span (\d+) points where the label alone leaves (\d+) points/.exec(known) ?? [])
		.slice(1)
		.map(Number);
	expect(now).toBeLessThan(label / 2);
	const rows = flexPump.getAllByRole("listitem").map((item) => ({
		words: spaces(item.textContent),
		bar: Number(item.querySelector("rect")?.getAttribute("width")),
	}));
	expect(rows.map(({ words }) => words.replace(/\d+ points/, ""))).toEqual([
		"Now",
		"In a month",
		"In three months",
		"In half a year",
		"The label alone",
	]);
	const points = rows.map(({ words }) => Number(/(\d+) points/.exec(words)?.[1]));
	expect(points[0]).toBe(now);
	expect(points).toEqual([...points].sort((a, b) => a - b));
	// Each bar is as long beside the longest as its number is beside the largest.
	for (const [i, { bar }] of rows.entries()) expect(Math.abs(bar - (100 * points[i]) / points[4])).toBeLessThan(3);
	// Bought and tested.
	expect(flexPump.getAllByText("once, last 10 days ago")).toHaveLength(2);
	expect(spaces(flexPump.getByText(/per L/).textContent)).toBe("€1.200 per L, Jun 10, 2026");
});

test("a pump that was never tested is known by its label, and draws no fading of nothing", async () => {
	await open("#/place/Mill%20Road");
	const e10Pump = await pump("Gasoline E10 (US)");
	e10Pump.getByText("Never tested: the label is all that is known.");
	expect(e10Pump.queryByRole("listitem")).toBeNull();
	e10Pump.getByText("none entered");
	e10Pump.getByText("never");
});

test("a place nobody named says so and leads back", async () => {
	await open("#/place/Nowhere");
	await screen.findByText(/No fill and no test in the log of “The grey one” names the place “Nowhere”/);
	expect(screen.getByRole("link", { name: "All places" }).getAttribute("href")).toBe("#/places");
});

test("a log that names no place says what naming one is good for", async () => {
	await open("#/places", [life[0], life[5]]);
	await screen.findByRole("heading", { name: "No place is named yet" });
});

test("a place of any name is reached from its entry in the log", async () => {
	const name = "Esquina/Nº 5 100 % ü?";
	const app = await open("#/entry/odd", [
		life[0],
		aFill({ id: "odd", at: "2026-06-10T12:00:00+02:00", product: e10, place: name }),
	]);
	await app.user.click(await screen.findByRole("link", { name: `What is known of ${name}` }));
	await screen.findByRole("heading", { name });
	await pump("Gasoline E10 (US)");
});

test("a fuel whose label leaves nothing open has no bracket and nothing to learn", async () => {
	const exact = { id: "House blend", range: [0.3, 0.3] };
	await open("#/place/Harbour", [
		life[0],
		aFill({ at: "2026-06-10T12:00:00+02:00", product: exact, place: "Harbour" }),
	]);
	const house = await pump("House blend");
	house.getByText("The label leaves nothing open.");
	expect(house.queryByText(/^label/)).toBeNull();
});

test("what can't be reckoned is said", async () => {
	await renderApp({
		at: "#/places",
		now,
		logs: [{ car, events: life as never }],
		wrap: (keeper) => ({ ...keeper, places: () => Promise.reject(new Error("no memory")) }),
	});
	await screen.findByText(/could not be reckoned/);
});

test("the places of the invented car know their tested pump better than the label", { timeout: 60_000 }, async () => {
	const { car: invented, events } = demoLog(now);
	await renderApp({ at: "#/place/Harbour", now, logs: [{ car: invented, events }] });
	(await pump("Flex fuel E85 (US)")).getByText(/^Tested 2 times/);
});

test("Car leads to the places", async () => {
	await open("#/car");
	expect((await screen.findByRole("link", { name: "Places and their pumps" })).getAttribute("href")).toBe("#/places");
});

test("what is known is worded by what it rests on", () => {
	const pumpOf = (fields: object) => ({
		median: 0.7,
		low: 0.6,
		high: 0.8,
		dots: [],
		labelWidth: 0.34,
		better: 0.4,
		fading: [],
		...fields,
	});
	const known = (fields: object, pump: object = {}) =>
		spaces(
			knownWords(
				{
					product: flex,
					pump: pumpOf(pump),
					fills: 1,
					samples: 0,
					lastFill: null,
					lastSample: null,
					price: null,
					...fields,
				} as never,
				now,
			),
		);
	const tested = { samples: 1, lastSample: "2026-01-01T12:00:00Z" };
	expect(known({})).toBe(
		"Never tested. What the tank and other pumps showed narrows it: 9 in 10 span 20 points where the label alone leaves 34 points.",
	);
	expect(known(tested, { better: 0.01 })).toMatch(/^Tested once, Jan 1, 2026: by now the label says as much\.$/);
	expect(known({ ...tested, samples: 3 })).toMatch(/^Tested 3 times, last Jan 1, 2026: 9 in 10 span 20 points/);
	expect(known({}, { better: 0.01 })).toBe("Never tested: the label is all that is known.");
	expect(known({}, { labelWidth: 0 })).toBe("The label leaves nothing open.");
	expect([0, 30, 90, 180, 45, 60].map(aheadWords)).toEqual([
		"Now",
		"In a month",
		"In three months",
		"In half a year",
		"In 45 days",
		"In 2 months",
	]);
	expect([0.0101, 0.034, 0.2].map((width) => spaces(pointsWide(width)))).toEqual([
		"1 point",
		"3.4 points",
		"20 points",
	]);
	const narrow = pumpOf({ median: 0.0951, low: 0.0902, high: 0.0999 }) as never;
	expect([deliveredWords(narrow), deliveredRange(narrow)].map(spaces)).toEqual(["9.5 %", "9–10 %"]);
	expect(visitWords({ place: "", products: [], fills: 0, samples: 2, lastVisit: "2026-06-19T12:00:00Z" }, now)).toBe(
		"Last visit a day ago. Never filled, 2 tests.",
	);
});
