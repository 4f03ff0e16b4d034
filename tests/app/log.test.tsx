import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { LogEvent } from "../../src/domain/event";
import type { AccountView } from "../../src/keeper/view";
import { aCalibration, aCar, aFill, aFlash, aLevel, aStart, aTankReading, aVoid } from "../helpers/logs";
import { anAccount, figures, manyFills } from "./lines";
import { renderApp } from "./renderApp";

const car = aCar({ calibrations: [aCalibration({ name: "Blend 30" })] });
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const day = (date: string, minute = "00") => `2026-${date}T12:${minute}:00+02:00`;
const life = [
	aFlash({ at: day("04-10") }),
	aStart({ at: day("04-10", "05"), contents: { range: [0.09, 0.1] } }),
	aFill({ id: "f1", at: day("04-20"), product: flex, litres: 15, place: "Corner station" }),
	aFill({ id: "f2", at: day("04-20", "01"), product: e10, litres: 20, place: "Corner station" }),
	aTankReading({ at: day("05-12"), value: 0.75, sd: 0.02 }),
	aLevel({ at: day("05-13"), gauge: 0.5 }),
	aVoid({ at: day("05-13", "30") }),
];

const openLog = async (events: readonly LogEvent[] = life, wrap?: (keeper: KeeperPort) => KeeperPort) => {
	const app = await renderApp({ at: "#/log", logs: [{ car, events }], ...(wrap ? { wrap } : {}) });
	await screen.findAllByRole("heading", { level: 2 });
	return app;
};
/** A keeper whose accounts are made up: the estimator would take minutes over 2,000 entries. */
const telling = (account: AccountView) => (keeper: KeeperPort) =>
	({ ...keeper, account: async () => account }) as KeeperPort;
const rows = () =>
	within(screen.getByRole("main"))
		.getAllByRole("listitem")
		.flatMap((item) => within(item).queryAllByRole("link"));
const told = () => rows().map(({ textContent }) => textContent?.replaceAll("\u00a0", " "));
const voids = () => screen.getByRole("button", { name: "Show void entries (1)" });

test("the log tells what happened and what it did, the newest first, the fills of a stop together", async () => {
	await openLog();
	expect(told()).toHaveLength(4);
	const [reading, stop, start, flash] = told();
	expect(reading).toMatch(/The tank was measured: 75 %.*Does not fit the account/);
	expect(stop).toMatch(/15 L of “Flex fuel E85 \(US\)” and 20 L of “Gasoline E10 \(US\)” at Corner station/);
	expect(stop).toMatch(/\d+ % →became \d+ %, 9 in 10: \d+–\d+ %/);
	expect(start).toMatch(/The account began with 9–10 % ethanol in the tank.*Below the window: 20 in 20/);
	expect(flash).toMatch(/Flashed: Blend 30.*Window 26–34 % from here on/);
});

test("the log is told month by month", async () => {
	await openLog();
	const month = (date: string) =>
		new Intl.DateTimeFormat(undefined, { month: "long", year: "numeric" }).format(new Date(date));
	const links = (date: string) => within(screen.getByRole("region", { name: month(date) })).getAllByRole("link");
	expect(links("2026-05-12")).toHaveLength(1);
	expect(links("2026-04-12")).toHaveLength(3);
});

test("every row leads to its entry, and the way back leads to the row", async () => {
	const { user } = await openLog();
	await user.click(screen.getByRole("button", { name: "All" }));
	await user.click(screen.getByRole("link", { name: /15\sL of/ }));
	await screen.findByRole("button", { name: "Void this stop" });
	expect(location.hash).toBe("#/entry/f1");
	await user.click(screen.getByRole("link", { name: "Back to the log" }));
	const row = await screen.findByRole("link", { name: /15\sL of/ });
	await waitFor(() => expect(document.activeElement).toBe(row));
	expect(screen.getByRole("button", { name: "All" }).getAttribute("aria-pressed")).toBe("true");
});

test("void entries are shown on demand, and say that they are void", async () => {
	const { user } = await openLog();
	expect(screen.queryByRole("link", { name: /gauge was noted/ })).toBeNull();
	expect(voids().getAttribute("aria-pressed")).toBe("false");
	await user.click(voids());
	expect(voids().getAttribute("aria-pressed")).toBe("true");
	const row = screen.getByRole("link", { name: /void.*gauge was noted at 50\s%/ });
	expect(row.querySelector("s")?.textContent).toMatch(/gauge was noted/);
});

test("what is void can be brought back, and that can be undone", async () => {
	const { user, events } = await openLog();
	await user.click(voids());
	await user.click(screen.getByRole("button", { name: /^Bring back: The gauge was noted/ }));
	await screen.findByText("The gauge note counts again.");
	expect(screen.queryByRole("button", { name: /void entries/ })).toBeNull();
	expect(told()[0]).toMatch(/gauge was noted at 50 %(still|\d)/);
	expect((await events()).at(-1)).toMatchObject({ kind: "void", target: "void" });

	await user.click(screen.getByRole("button", { name: "Undo" }));
	await screen.findByRole("button", { name: "Show void entries (1)" });
	expect((await events()).at(-1)).toMatchObject({ kind: "void" });
});

test("bringing back what was corrected puts the correction away", async () => {
	const better = aLevel({ id: "better", at: day("05-13"), gauge: 0.75 });
	const { user, events } = await openLog([...life, better]);
	await user.click(voids());
	await user.click(screen.getByRole("button", { name: /^Bring back/ }));
	await screen.findByText("The gauge note counts again, in place of its correction.");
	expect(told()[0]).toMatch(/^[^v]*gauge was noted at 50 %/);
	expect(told()[1]).toMatch(/void.*gauge was noted at 75 %/);
	expect((await events()).slice(-2).map((event) => event.kind === "void" && event.target)).toEqual(
		expect.arrayContaining(["void", "better"]),
	);
});

test("the chart follows the choice of time", async () => {
	const { user } = await openLog();
	const finding = () => screen.getByRole("img", { name: /most likely content/ }).getAttribute("aria-label");
	expect(finding()).toMatch(/^The whole log/);
	await user.click(screen.getByRole("button", { name: "3 months" }));
	expect(finding()).toMatch(/^The last 3 months.*of 3 entries|^The last 3 months.*All 3 entries/);
	expect(screen.getByRole("button", { name: "3 months" }).getAttribute("aria-pressed")).toBe("true");
	expect(screen.getByRole("button", { name: "Last 10 stops" }).getAttribute("aria-pressed")).toBe("false");
});

test("an empty log says what will be here", async () => {
	await openLog([]);
	screen.getByRole("heading", { name: "Nothing is in the log yet" });
	expect(screen.getByRole("link", { name: "Record a fill" }).getAttribute("href")).toBe("#/fill");
	expect(screen.queryByRole("img", { name: /content/ })).toBeNull();
});

test("entries of a newer version are counted, not hidden", async () => {
	await openLog(life, telling({ ...anAccount(life, () => figures(0.3), { car }), unreadable: 2 }));
	screen.getByText(/^2 entries were written by a newer version of the app\./);
});

test("2,000 entries open at once, the older ones on demand", async () => {
	const events = manyFills(2000, Date.parse("2026-05-30T10:00:00Z"));
	const account = anAccount(events, (_, i) => figures(0.2 + (i % 20) / 100), { car });
	const { user } = await openLog([], telling(account));
	expect(rows()).toHaveLength(60);
	const begun = performance.now();
	await user.click(screen.getByRole("button", { name: "All" }));
	screen.getByText(/^Drawn from \d+ of 2,000 entries/);
	await user.click(screen.getByRole("button", { name: "Older entries (1,940)" }));
	expect(rows()).toHaveLength(180);
	screen.getByRole("button", { name: "Older entries (1,820)" });
	expect(performance.now() - begun).toBeLessThan(5000);
});
