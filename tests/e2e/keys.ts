/** A driver who has keys and no pointer. */
import type { Page } from "playwright-core";
import { expect } from "vitest";

/** What the keys are on, in the words that a screen reader says, and what is wrong with how it is seen. */
interface Focused {
	readonly name: string;
	readonly wrong: readonly string[];
}

export function keysOn(page: Page) {
	async function focused(): Promise<Focused> {
		return page.evaluate(read);
	}
	/** What comes in above may push it off the phone for a moment; the browser scrolls with the next frame. */
	async function settled(): Promise<Focused> {
		let at = await focused();
		for (let frames = 0; at.wrong.length > 0 && frames < 10; frames++) {
			await page.waitForTimeout(50);
			at = await focused();
		}
		return at;
	}
	/** Goes on with Tab, or back, until it stands on what is called so; everything on the way must be seen. */
	async function go(name: RegExp, key: "Tab" | "Shift+Tab"): Promise<void> {
		const passed: string[] = [];
		for (let steps = 0; steps < 120; steps++) {
			await page.keyboard.press(key);
			const at = await settled();
			// Behind the last place come the browser's own.
			if (at.name === "nothing" && !passed.includes(at.name)) {
				passed.push(at.name);
				continue;
			}
			expect(at.wrong, `on “${at.name}”`).toEqual([]);
			if (name.test(at.name)) return;
			passed.push(at.name);
		}
		throw new Error(`no ${name} within reach of ${key}, but ${passed.join(", ")}`);
	}
	return {
		focused,
		to: (name: RegExp) => go(name, "Tab"),
		backTo: (name: RegExp) => go(name, "Shift+Tab"),
		press: (...keys: readonly string[]) =>
			keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve()),
		type: (text: string) => page.keyboard.type(text),
		/** The focus is there, is seen, and stays. */
		async on(name: RegExp): Promise<void> {
			await expect.poll(async () => (await focused()).name, { timeout: 20_000 }).toMatch(name);
			// What comes later must not take it away.
			await page.waitForTimeout(150);
			expect(await focused()).toEqual({ name: expect.stringMatching(name), wrong: [] });
		},
	};
}

/** Runs in the page. */
function read(): Focused {
	const at = document.activeElement;
	if (!at || at === document.body) return { name: "nothing", wrong: ["nothing has the focus"] };
	const labels = at instanceof HTMLInputElement || at instanceof HTMLSelectElement ? [...(at.labels ?? [])] : [];
	const said = at.getAttribute("aria-label") ?? (labels.map((label) => label.textContent).join(" ") || at.textContent);
	const name = (said ?? "").replace(/\s+/g, " ").trim().slice(0, 200);
	// Of what cannot be seen itself, such as a radio button, its face is.
	const face = getComputedStyle(at).opacity === "0" ? (at.nextElementSibling ?? at) : at;
	const { outlineStyle, outlineWidth } = getComputedStyle(face);
	const ringed = at.matches(":focus-visible") && outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2;
	const { left, right, top: above, bottom: below } = face.getBoundingClientRect();
	// Of what is longer than the phone, the part on it counts.
	const [top, bottom] = [Math.max(0, above), Math.min(innerHeight, below)];
	const parts = [0.15, 0.5, 0.85];
	const hits = parts.flatMap((down) =>
		parts.map((across) => document.elementFromPoint(left + (right - left) * across, top + (bottom - top) * down)),
	);
	const seen = hits.some((hit) => hit !== null && (face.contains(hit) || hit === at));
	const over = hits.find((hit) => hit !== null)?.closest("[class]");
	const hidden = `it is hidden, from ${Math.round(above)} to ${Math.round(below)}, by ${over?.getAttribute("class")}`;
	return { name, wrong: [...(ringed ? [] : ["no ring is drawn around it"]), ...(seen ? [] : [hidden])] };
}
