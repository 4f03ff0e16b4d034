import { render, screen, within } from "@testing-library/preact";
import { userEvent } from "@testing-library/user-event";
import { expect, test } from "vitest";
import { HistoryChart } from "../../src/app/components/HistoryChart";
import { HistoryTable } from "../../src/app/components/HistoryTable";
import { findingOf, historyOf, type Shown, shownOf } from "../../src/app/historyView";
import { itemsOf } from "../../src/app/logView";
import type { LogEvent } from "../../src/domain/event";
import type { Figures } from "../../src/keeper/view";
import { aCalibration, aCar, aFill, aFlash, aStart, aTankReading } from "../helpers/logs";
import { anAccount, figures, manyFills } from "./lines";

const now = Date.parse("2026-06-20T12:00:00Z");
const ago = (days: number) => new Date(now - days * 86_400_000).toISOString();
const car = aCar({ calibrations: [aCalibration(), aCalibration({ id: "e50", window: [0.45, 0.55] })] });

function shown(events: readonly LogEvent[], figuresAfter: (event: LogEvent, i: number) => Figures): Shown {
	const part = shownOf(historyOf(car, itemsOf(anAccount(events, figuresAfter, { car }))), "all", now);
	if (!part) throw new Error("nothing to show");
	return part;
}
const few = shown(
	[
		aStart({ at: ago(30) }),
		aFill({ id: "high", at: ago(20) }),
		aFill({ id: "inside", stop: "2", at: ago(15) }),
		aTankReading({ at: ago(14) }),
		aFlash({ at: ago(10), calibration: "e50" }),
		aFill({ id: "after", stop: "3", at: ago(9) }),
	],
	({ id }) => figures({ start: 0.07, high: 0.41, after: 0.5 }[id] ?? 0.3),
);
const plain = (text: string | null) => text?.replaceAll("\u00a0", " ");

test("the chart is one picture whose name is the finding", () => {
	render(<HistoryChart shown={few} />);
	expect(screen.getByRole("img", { name: findingOf(few) })).toBeTruthy();
	expect(screen.getAllByRole("img")).toHaveLength(1);
});

test("what lies outside the window has another shape, and only signs that are there are explained", () => {
	const { container, rerender } = render(<HistoryChart shown={few} />);
	const shape = (side: string) => container.querySelector(`[role=img] .mark.${side}`)?.getAttribute("d");
	expect(new Set([shape("inside"), shape("above"), shape("below")]).size).toBe(3);
	const keys = () => screen.getAllByRole("listitem").map(({ textContent }) => textContent);
	expect(keys()).toEqual([
		"most likely",
		"9 in 10",
		"the calibration’s window",
		"above it",
		"below it",
		"measured, ± one sd",
	]);
	const calm = shown([aFill({ at: ago(5) })], () => figures(0.3));
	rerender(<HistoryChart shown={calm} />);
	expect(keys()).toEqual(["most likely", "9 in 10", "the calibration’s window"]);
});

test("each window is marked for the time it was in force", () => {
	const { container } = render(<HistoryChart shown={few} />);
	const corridors = [...container.querySelectorAll("[role=img] .corridor")];
	const edge = (name: string) => corridors.map((corridor) => Number(corridor.getAttribute(name)));
	expect(corridors).toHaveLength(2);
	expect(edge("x")[0] + edge("width")[0]).toBeCloseTo(edge("x")[1]);
	expect(edge("y")[1]).toBeLessThan(edge("y")[0]);
});

test("2,000 entries are drawn from 300 points or fewer, the peaks among them", () => {
	const many = shown(manyFills(2000, now), (_, i) => figures(i === 777 ? 0.9 : 0.3));
	const begun = performance.now();
	const { container } = render(<HistoryChart shown={many} />);
	expect(performance.now() - begun).toBeLessThan(1000);
	const line = container.querySelector("[role=img] .median")?.getAttribute("d") ?? "";
	expect(line.match(/V/g)?.length).toBeLessThan(300);
	expect(container.querySelectorAll("[role=img] *").length).toBeLessThan(400);
	expect(container.querySelectorAll("[role=img] .mark.above")).toHaveLength(1);
	screen.getByText(/^Drawn from \d+ of 2,000 entries; the highest and the lowest are among them\.$/);
});

test("a log that began today, and one that knows no window, are drawn", () => {
	const today = shown([aStart({ at: ago(0) })], () => figures(0.425, { low: 0.04, high: 0.81 }));
	const { container } = render(<HistoryChart shown={{ ...today, windows: [{ from: -Infinity, window: null }] }} />);
	expect(container.innerHTML).not.toMatch(/NaN|Infinity/);
	expect(container.querySelectorAll(".corridor, .edge")).toHaveLength(0);
});

test("the same numbers are in a table, the newest first", async () => {
	render(<HistoryTable shown={few} />);
	await userEvent.click(screen.getByText("The same in numbers"));
	const rows = (await screen.findAllByRole("row")).map((row) =>
		within(row)
			.getAllByRole(/cell|columnheader/)
			.map(({ textContent }) => plain(textContent)),
	);
	expect(rows).toHaveLength(6);
	expect(rows[0]).toEqual(["When", "Most likely", "9 in 10", "Window", "Measured"]);
	expect(rows[1]).toEqual(["50 %", "46–54 %", "45–55 %", ""]);
	expect(rows[2]).toEqual(["30 %", "26–34 %", "26–34 %", "31 % ± 2 %"]);
	expect(rows[4]).toEqual(["41 % (above)", "37–45 %", "26–34 %", ""]);
	expect(screen.getByRole("table", { name: findingOf(few) })).toBeTruthy();
});

test("a long table shows its last 50 rows and more on demand", async () => {
	render(<HistoryTable shown={shown(manyFills(120, now), () => figures(0.3))} />);
	await userEvent.click(screen.getByText("The same in numbers"));
	expect(await screen.findAllByRole("rowheader")).toHaveLength(50);
	await userEvent.click(screen.getByRole("button", { name: "Show 50 more rows" }));
	await userEvent.click(screen.getByRole("button", { name: "Show 20 more rows" }));
	expect(screen.getAllByRole("rowheader")).toHaveLength(120);
	expect(screen.queryByRole("button")).toBeNull();
});
