/** A car with a short log, and what one sees and does on the screens that take measurements. */
import { screen, waitFor, within } from "@testing-library/preact";
import { expect } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { LevelEvent, LogEvent, ReadingEvent } from "../../src/domain/event";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

export const car = aCar({ calibrations: [aCalibration({ name: "Blend 30" })] });
export const flex = { id: "flex-51-83", range: [0.51, 0.83] };
export const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
export const life = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({ id: "f1", stop: "s1", at: "2026-05-02T12:00:00+02:00", product: flex, litres: 12, place: "Harbour" }),
	aFill({ id: "f2", stop: "s1", at: "2026-05-02T12:01:00+02:00", product: e10, litres: 20, place: "Harbour" }),
];

export const open = (kind: string, options: { wrap?: (keeper: KeeperPort) => KeeperPort } = {}) =>
	renderApp({ at: `#/measure/${kind}`, logs: [{ car, events: life }], ...options });
export const box = (name: string | RegExp) => screen.findByRole("textbox", { name });
export const value = async (name: string | RegExp) => ((await box(name)) as HTMLInputElement).value;
export const button = (name: string | RegExp) => screen.getByRole("button", { name });
export const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
export const said = (words: RegExp) =>
	screen.findByText((_, element) => words.test(spaces(element?.textContent)), { selector: "p" });
export const wouldDo = async () => within(await screen.findByRole("region", { name: "What it would do" }));
export const measured = (events: readonly LogEvent[]) =>
	events.filter((event): event is ReadingEvent | LevelEvent => event.kind === "reading" || event.kind === "level");

export async function type(app: RenderedApp, name: string | RegExp, typed: string): Promise<void> {
	const field = await box(name);
	await app.user.clear(field);
	if (typed !== "") await app.user.type(field, typed);
}
export async function saved(app: RenderedApp): Promise<ReadingEvent | LevelEvent> {
	await app.user.click(button("Save it"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	// Who opens the form again before it has gone finds the one that was saved.
	await waitFor(() => expect(screen.queryByRole("button", { name: "Save it" })).toBeNull());
	const events = measured(await app.events());
	expect(events).toHaveLength(1);
	return events[0];
}
/** What the preview says of one line, before and after. */
export async function fact(term: string): Promise<string> {
	const region = await wouldDo();
	const found = await region.findByText(term, { selector: "dt" });
	return spaces(found.nextElementSibling?.textContent);
}
