import { screen, waitFor, within } from "@testing-library/preact";
import { afterEach, describe, expect, test } from "vitest";
import { type AutomaticFile, type Desk, fileKey, keepFile } from "../../src/app/automaticBackup";
import { backupNotes } from "../../src/app/backupNotes";
import { watchBackups } from "../../src/app/backupWatch";
import type { KeeperPort } from "../../src/app/keeperPort";
import { formatLog, parseLog } from "../../src/store/backup";
import { aCar, aFill, aStart } from "../helpers/logs";
import { type FakeFile, fakeFile, offerPicker, rememberingFiles, withdrawPicker } from "./fakeFile";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T15:30:00Z");
const at = "2026-06-10T15:30:00Z";
const fills = [2, 3, 4, 5].map((day) =>
	aFill({ id: `f${day}`, stop: `s${day}`, at: `2026-06-0${day}T10:00:00Z`, litres: 10 }),
);
const log = { car: aCar(), events: [aStart({ at: "2026-06-01T10:00:00Z" }), ...fills] };
const more = aFill({ id: "more", stop: "more", at: "2026-06-09T10:00:00Z", litres: 5 });
const other = { car: aCar({ id: "other", name: "The red one" }), events: [aStart({ id: "o" })] };
const button = (name: string | RegExp) => screen.getByRole("button", { name });

afterEach(withdrawPicker);

/** A desk with one log and one file. */
function desk(file: FakeFile, text: string | null = formatLog(log)) {
	const notes = new Map<string, unknown>([[fileKey("car"), { handle: file.handle, writtenAt: null }]]);
	const made: Desk & { text: string | null } = {
		text,
		draft: async (key) => notes.get(key),
		saveDraft: async (key, value) => void notes.set(key, value),
		exportLog: async () => made.text,
	};
	return made;
}

describe("keepFile()", () => {
	test("writes the log, notes it as a backup, and leaves a file alone that has it", async () => {
		const file = fakeFile();
		const kept = desk(file);
		expect(await keepFile(kept, "car", at)).toMatchObject({ writtenAt: at, trouble: null });
		expect(file.text).toBe(kept.text);
		expect((await backupNotes(kept, "car")).last).toEqual({ at, entries: 5, how: "written" });
		expect(await keepFile(kept, "car", "2026-06-11T00:00:00Z")).toMatchObject({ writtenAt: at, trouble: null });
		expect(file.writes).toBe(1);
	});

	test("notes a file as written that was replaced just before the app was killed", async () => {
		const file = fakeFile("log.json", formatLog(log));
		const kept = desk(file);
		await kept.saveDraft(fileKey("car"), { handle: file.handle, writtenAt: "2026-06-01T00:00:00Z" });
		await keepFile(kept, "car", at);
		expect((await backupNotes(kept, "car")).last).toEqual({ at, entries: 5, how: "written" });
		expect(file.writes).toBe(0);
	});

	test("gives null where no file is chosen, or what is remembered is none", async () => {
		const kept = desk(fakeFile());
		expect(await keepFile(kept, "another", at)).toBeNull();
		await kept.saveDraft(fileKey("car"), { handle: {}, writtenAt: null });
		expect(await keepFile(kept, "car", at)).toBeNull();
	});

	test("never asks, and says what is missing, where it may not write", async () => {
		const file = fakeFile();
		for (const [permission, trouble] of [
			["prompt", "ask"],
			["denied", "refused"],
		] as const) {
			file.permission = permission;
			expect(await keepFile(desk(file), "car", at)).toMatchObject({ trouble });
		}
		expect([file.asked, file.writes]).toEqual([0, 0]);
	});

	test.each(["write", "close"] as const)(
		"leaves the old file whole where the %s fails, and tries again",
		async (on) => {
			const old = formatLog({ ...log, events: log.events.slice(0, 3) });
			const file = fakeFile("log.json", old);
			file.fails = { on, error: new DOMException("the disk is full", "QuotaExceededError") };
			const kept = desk(file);
			expect(await keepFile(kept, "car", at)).toMatchObject({ trouble: "failed", writtenAt: null });
			expect(file.text).toBe(old);
			expect((await backupNotes(kept, "car")).last).toBeNull();
			file.fails = null;
			expect(await keepFile(kept, "car", at)).toMatchObject({ trouble: null });
			expect(file.text).toBe(formatLog(log));
		},
	);

	test("says that the file is gone, or that the log could not be read", async () => {
		const file = fakeFile();
		file.fails = { on: "read", error: new DOMException("moved", "NotFoundError") };
		expect(await keepFile(desk(file), "car", at)).toMatchObject({ trouble: "gone" });
		file.fails = null;
		expect(await keepFile(desk(file, null), "car", at)).toMatchObject({ trouble: "failed" });
		expect(file.writes).toBe(0);
	});

	test("overwrites neither entries that the phone lacks nor another car’s log, but what is no log", async () => {
		const fuller = fakeFile("log.json", formatLog({ ...log, events: [...log.events, more] }));
		expect(await keepFile(desk(fuller), "car", at)).toMatchObject({ trouble: "fuller" });
		const strange = fakeFile("log.json", formatLog(other));
		expect(await keepFile(desk(strange), "car", at)).toMatchObject({ trouble: "other" });
		expect([fuller.writes, strange.writes]).toEqual([0, 0]);
		const cut = fakeFile("log.json", formatLog(log).slice(0, 300));
		expect(await keepFile(desk(cut), "car", at)).toMatchObject({ trouble: null });
		expect(cut.text).toBe(formatLog(log));
	});
});

/** The app with its watch, and what the keeper was asked. */
async function watched(options: Partial<Parameters<typeof renderApp>[0]> = {}) {
	const ports: KeeperPort[] = [];
	const errors: unknown[] = [];
	const files = new Map<string, unknown>();
	const remember = rememberingFiles(files);
	const app = await renderApp({
		at: "#/car",
		now,
		logs: [log],
		...options,
		wrap(keeper) {
			const port = remember(keeper);
			ports.push(port);
			return port;
		},
	});
	await watchBackups(
		app.model,
		ports[0],
		() => app.clock.now,
		(error) => errors.push(error),
	);
	return { app, errors, files };
}

async function choose(app: RenderedApp, file: FakeFile): Promise<string> {
	let suggested = "";
	offerPicker(async ({ suggestedName }) => {
		suggested = suggestedName;
		return file.handle;
	});
	await app.model.saveSettings({});
	await app.user.click(await screen.findByRole("button", { name: /^Choose (a|another) file…$/ }));
	await screen.findByText(new RegExp(`written to “${file.handle.name}”`));
	return suggested;
}

describe("on the Car screen", () => {
	test("the option is not shown where the browser has no such files", async () => {
		await watched();
		await screen.findByText(/No backup has left this phone: 5 entries/);
		expect(screen.queryByText("A backup after every save")).toBeNull();
		button("Save a backup");
	});

	test("a chosen file is written at once and after every save, until it is stopped", async () => {
		offerPicker(async () => fakeFile().handle);
		const { app, errors, files } = await watched();
		const file = fakeFile("grey.json");
		expect(await choose(app, file)).toBe("heeltap-the-grey-one-since-2026-06-10.json");
		await screen.findByText(/Last written within the last hour/);
		await screen.findByText(/Last backup: written within the last hour, with 5 entries\. Nothing was added since\./);
		expect(parseLog(file.text)).toMatchObject({ ok: true, value: { events: log.events } });

		app.clock.now += 3 * 86_400_000;
		await app.model.append([more]);
		await waitFor(() => expect(file.text).toContain('"more"'));
		await screen.findByText(/with 6 entries\. Nothing was added since\./);
		// Settings are part of a backup, too.
		await app.model.saveCar(aCar({ name: "The grey two" }));
		await waitFor(() => expect(file.text).toContain("The grey two"));

		await app.user.click(button("Stop writing it"));
		await screen.findByRole("button", { name: "Choose a file…" });
		expect(files.size).toBe(0);
		const { writes } = file;
		await app.model.append([aFill({ id: "last", stop: "last", at: "2026-06-12T10:00:00Z" })]);
		await screen.findByText(/1 entry since then is here only/);
		expect(file.writes).toBe(writes);
		expect(errors).toEqual([]);
	});

	test("a picker that is closed changes nothing, and one that fails is told of", async () => {
		offerPicker(() => Promise.reject(new DOMException("closed", "AbortError")));
		const { app, files } = await watched();
		await app.user.click(await screen.findByRole("button", { name: "Choose a file…" }));
		expect(screen.queryByRole("alert")).toBeNull();
		offerPicker(() => Promise.reject(new DOMException("a folder of the system", "SecurityError")));
		await app.user.click(button("Choose a file…"));
		await screen.findByText(/The browser would not give that file/);
		expect(files.size).toBe(0);
	});

	test("where the browser wants to be asked again one tap does it, and writes what was missed", async () => {
		offerPicker(async () => fakeFile().handle);
		const { app } = await watched();
		const file = fakeFile("grey.json");
		await choose(app, file);
		file.permission = "prompt";
		await app.model.append([more]);
		await screen.findByText(/will ask you once more before the app may write to it/);
		expect(file.asked).toBe(0);
		expect(file.text).not.toContain('"more"');
		await app.user.click(button("Let the app write to it"));
		await screen.findByText(/with 6 entries\. Nothing was added since\./);
		expect(file.asked).toBe(1);
		expect(file.text).toContain('"more"');
	});

	test("a log that lost entries does not take them from the file", async () => {
		offerPicker(async () => fakeFile().handle);
		const { app } = await watched();
		const full = formatLog({ ...log, events: [...log.events, more] });
		const file = fakeFile("grey.json", full);
		await choose(app, file);
		await screen.findByText(/It has entries that this phone lacks, so it is left alone/);
		const opened = new File([file.text], "grey.json", { type: "application/json" });
		await app.user.upload(screen.getByLabelText("Open a backup"), opened);
		await waitFor(() => expect(screen.queryByText(/so it is left alone/)).toBeNull());
		await app.model.append([aFill({ id: "last", stop: "last", at: "2026-06-10T10:00:00Z" })]);
		await waitFor(() => expect(file.text).toContain('"last"'));
		expect(file.text).toContain('"more"');
	});
});

test("the Tank screen says with one entry missing that the browser wants to be asked, and one tap does it", async () => {
	const { app, files } = await watched({ at: "#/tank" });
	const file = fakeFile("grey.json");
	files.set(fileKey("car"), { handle: file.handle, writtenAt: null } satisfies AutomaticFile);
	await app.model.append([more]);
	await waitFor(() => expect(file.text).toContain('"more"'));
	expect(screen.queryByRole("region", { name: "Backup" })).toBeNull();
	file.permission = "prompt";
	await app.model.append([aFill({ id: "last", stop: "last", at: "2026-06-10T09:00:00Z" })]);
	const line = within(await screen.findByRole("region", { name: "Backup" }));
	line.getByText(/^1 entry since the backup of/);
	line.getByText(/The log should be in “grey\.json”\. The browser will ask you once more/);
	await app.user.click(line.getByRole("button", { name: "Let the app write to it" }));
	await waitFor(() => expect(screen.queryByRole("region", { name: "Backup" })).toBeNull());
	expect(file.text).toContain('"last"');
});

test("a damaged log is not written to the file", async () => {
	const { app, files, errors } = await watched();
	const file = fakeFile();
	app.model.damaged({ cars: [], copied: true } as never);
	files.set(fileKey("car"), { handle: file.handle, writtenAt: null } satisfies AutomaticFile);
	await app.model.append([more]);
	await screen.findByText(/6 entries are here only/);
	expect(file.writes).toBe(0);
	app.model.damaged(null);
	await waitFor(() => expect(file.text).toContain('"more"'));
	expect(errors).toEqual([]);
});

test("every car has a file of its own, and one that is not on the screen is written, too", async () => {
	offerPicker(async () => fakeFile().handle);
	const { app, files } = await watched({ logs: [log, other] });
	const [grey, red] = [fakeFile("grey.json"), fakeFile("red.json")];
	await choose(app, grey);
	files.set(fileKey("other"), { handle: red.handle, writtenAt: null } satisfies AutomaticFile);
	await app.model.appendTo("other", [aFill({ id: "red fill", at: "2026-06-09T10:00:00Z" })]);
	await waitFor(() => expect(red.text).toContain("red fill"));
	expect(grey.text).not.toContain("red fill");
	expect(parseLog(red.text)).toMatchObject({ ok: true, value: { car: { id: "other" } } });
});
