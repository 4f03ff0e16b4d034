import { renderHook } from "@testing-library/preact";
import { beforeEach, expect, test, vi } from "vitest";
import { isAnythingUnsaved, useUnsaved } from "../../src/app/unsaved";
import { watchUpdates } from "../../src/app/updates";
import type { UpdateCallbacks } from "../../src/pwa/update";

let callbacks: UpdateCallbacks | undefined;
vi.mock("../../src/pwa/update", () => ({
	browser: () => ({}),
	watchForUpdates: async (given: UpdateCallbacks) => {
		callbacks = given;
	},
}));
beforeEach(() => {
	callbacks = undefined;
});

/** A phone on which a new version waits. */
async function offered() {
	const shown: { readonly text: string; readonly action?: { readonly label: string; readonly run: () => void } }[] = [];
	let write = () => {};
	const written = vi.fn(() => new Promise<void>((done) => (write = done)));
	const toasts = {
		show: (text: string, action?: { label: string; run: () => void }) =>
			void shown.push({ text, ...(action && { action }) }),
	};
	await watchUpdates({ written }, toasts, "sw.js");
	const apply = vi.fn();
	callbacks?.onWaiting(apply);
	return { shown, apply, written, write: () => write() };
}

const soon = () => new Promise((done) => setTimeout(done));

test("“Restart” waits until what was typed is on the disk", async () => {
	const phone = await offered();
	expect(phone.shown.map(({ text }) => text)).toEqual(["A new version is ready."]);
	phone.shown[0]?.action?.run();
	await soon();
	expect(phone.written).toHaveBeenCalledTimes(1);
	expect(phone.apply).not.toHaveBeenCalled();
	phone.write();
	await soon();
	expect(phone.apply).toHaveBeenCalledTimes(1);
});

test("“Restart” asks while something is typed that no draft keeps", async () => {
	const form = renderHook(() => useUnsaved(true));
	const phone = await offered();
	phone.shown[0]?.action?.run();
	await soon();
	expect(phone.written).not.toHaveBeenCalled();
	const question = phone.shown[1];
	expect(question?.text).toMatch(/^There is something typed or opened that is not saved yet\./);
	expect(question?.action?.label).toBe("Begin anew");
	question?.action?.run();
	phone.write();
	await soon();
	expect(phone.apply).toHaveBeenCalledTimes(1);
	form.unmount();
	await vi.waitFor(() => expect(isAnythingUnsaved()).toBe(false));
	phone.shown[0]?.action?.run();
	expect(phone.shown.slice(2)).toEqual([]);
});
