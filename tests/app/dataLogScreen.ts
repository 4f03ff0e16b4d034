/** The screen of a data log, as a person meets it. */
import { screen, waitFor, within } from "@testing-library/preact";
import { expect } from "vitest";
import type { ReadingEvent } from "../../src/domain/event";
import type { Drive } from "../helpers/drive";
import { type CsvStyle, csvOf } from "../helpers/logCsv";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

export const car = aCar({
	calibrations: [
		aCalibration({ name: "Blend 30" }),
		aCalibration({ id: "e50", name: "Blend 50", calibratedFor: 0.5, window: [0.45, 0.55] }),
	],
});
export const life = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({ id: "f1", at: "2026-05-02T12:00:00+02:00" }),
];
export const recorded = Date.parse("2026-05-20T10:00:00Z");
export const drive: Drive = { seed: "drive", trim: 0.06, seconds: 600, rate: 2 };

export async function openScreen(options: Parameters<typeof renderApp>[0] = {}): Promise<RenderedApp> {
	const app = await renderApp({ at: "#/datalog", logs: [{ car, events: life }], ...options });
	await screen.findByLabelText("Choose a data log");
	return app;
}
export function logFile(made: Partial<Drive> = {}, style: CsvStyle = {}, lastModified = recorded): File {
	return new File([csvOf({ ...drive, ...made }, style)], "drive.csv", { lastModified });
}
export async function choose(app: RenderedApp, file: File): Promise<void> {
	await app.user.upload(screen.getByLabelText(/^Choose a data log/), file);
}
export const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
export const region = async (name: string) => within(await screen.findByRole("region", { name }));
/** Of a region that is all there: it is drawn piece by piece. */
export async function text(name: string): Promise<string> {
	const region = await screen.findByRole("region", { name });
	await waitFor(() => expect(region.ariaBusy).not.toBe("true"));
	return spaces(region.textContent);
}
export const readings = async (app: RenderedApp) =>
	(await app.events("car")).filter((event): event is ReadingEvent => event.kind === "reading");
