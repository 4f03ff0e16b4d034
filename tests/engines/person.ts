/** What a person does with a page: finds things by what they are and are called, taps, types, reads. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import axeCore, { type Result } from "axe-core";
import type { Engine } from "./engine";

const require = createRequire(import.meta.url);
const finder = readFileSync(require.resolve("@testing-library/dom/dist/@testing-library/dom.umd.min.js"), "utf8");

/** Two cores that others use as well take long for what a quiet machine does in an instant. */
const patienceMs = 60_000;

type Name = string | RegExp;

export type Person = ReturnType<typeof personAt>;

export function personAt(engine: Engine) {
	/** What is found once it is there; a point only where nothing lies over it. */
	async function find(role: string, name: Name, { inside = "body", uncovered = false } = {}): Promise<Found> {
		const sought = name instanceof RegExp ? { pattern: name.source } : { text: name };
		const deadline = Date.now() + patienceMs;
		for (;;) {
			if (!(await engine.run(() => "TestingLibraryDom" in window))) await engine.load(finder);
			const found = await engine.run(lookFor, role, sought, inside, uncovered);
			if (found) return found;
			if (Date.now() > deadline) {
				const shown = await engine.run(() => `${location.hash}\n${document.body.textContent}`);
				throw new Error(`no ${role} ${name} on the screen:\n${shown}`);
			}
			await new Promise((done) => setTimeout(done, 25));
		}
	}
	/** Taps what rests: found twice at the same place. */
	async function tap(role: string, name: Name, inside?: string): Promise<void> {
		const look = () => find(role, name, { uncovered: true, ...(inside !== undefined && { inside }) });
		for (let last = await look(); ; ) {
			await new Promise((done) => setTimeout(done, 50));
			const now = await look();
			if (now.x === last.x && now.y === last.y) return engine.tap(now.x, now.y);
			last = now;
		}
	}
	async function holds(name: Name, text: string): Promise<void> {
		for (const deadline = Date.now() + 10_000; ; ) {
			const { value } = await find("textbox", name);
			if (value === text) return;
			if (Date.now() > deadline) throw new Error(`${name} holds “${value}” after “${text}” was put in`);
		}
	}
	return {
		/** The text of an element by its role and name, once it is there. */
		see: async (role: string, name: Name): Promise<string> => (await find(role, name)).text,
		/** The text of the innermost element that matches, once it is there. */
		read: async (text: RegExp): Promise<string> => (await find("", text)).text,
		tap,
		tab: (name: string) => tap("link", name, "nav"),
		/** Types into an empty field. */
		async type(name: Name, text: string): Promise<void> {
			await tap("textbox", name);
			await engine.type(text);
			await holds(name, text);
		},
		/** Taps an amount in on the keypad. */
		async press(digits: string): Promise<void> {
			const { value } = await find("textbox", /^Amount/);
			for (const key of digits) await tap("button", key === "." ? "decimal" : key);
			await holds(/^Amount/, value + digits);
		},
		/** Breaches of accessibility rules on the page as it is now, in words. */
		async breaches(): Promise<string[]> {
			await engine.load(axeCore.source);
			const violations = await engine.run(async () => {
				const { axe } = window as unknown as { axe: typeof axeCore };
				return (await axe.run()).violations.map(({ help, id, nodes }: Result) => ({
					id,
					help,
					at: nodes.map((node) => node.target.join(" ")).join(", "),
				}));
			});
			return violations.map(({ id, help, at }) => `${id}: ${help} (${at})`);
		},
		/** Waits until the app is stored and starts without a network. */
		untilOffline: () =>
			engine.run(async () => {
				const { active } = await navigator.serviceWorker.ready;
				if (active && active.state !== "activated")
					await new Promise<void>((done) => {
						active.addEventListener("statechange", () => active.state === "activated" && done());
					});
			}),
	};
}

interface Found {
	readonly text: string;
	readonly value: string;
	/** Its middle. */
	readonly x: number;
	readonly y: number;
}

/** Runs in the page. Role "": any element that holds the text itself. */
function lookFor(
	role: string,
	{ text, pattern }: { readonly text?: string; readonly pattern?: string },
	inside: string,
	uncovered: boolean,
): Found | null {
	const { queryAllByRole, queryAllByText } = (
		window as never as { TestingLibraryDom: typeof import("@testing-library/dom") }
	).TestingLibraryDom;
	const name = pattern === undefined ? (text ?? "") : new RegExp(pattern);
	const spaces = (raw: string) => raw.replaceAll("\u00a0", " ");
	const within = document.querySelector<HTMLElement>(inside);
	if (!within) return null;
	const all = role
		? queryAllByRole(within, role, {
				name: (heard: string) => (typeof name === "string" ? spaces(heard) === name : name.test(spaces(heard))),
			})
		: queryAllByText(within, name, { normalizer: (raw: string) => spaces(raw).trim() });
	const element = all.find((one) => one.checkVisibility?.() ?? true);
	if (!element) return null;
	// A radio button may be drawn by its label.
	const drawn =
		[element, element.closest("label")].find((one) => one && one.getBoundingClientRect().height > 4) ?? element;
	const { left, top, width, height } = drawn.getBoundingClientRect();
	const [x, y] = [left + width / 2, top + height / 2];
	if (uncovered) {
		const hit = document.elementFromPoint(x, y);
		const reached = hit && (drawn.contains(hit) || hit.closest("label")?.contains(drawn));
		if (!reached) {
			// Looked for again once the scrolling has come to rest.
			drawn.scrollIntoView({ block: "center", behavior: "instant" });
			return null;
		}
	}
	return { text: spaces(element.textContent ?? ""), value: (element as HTMLInputElement).value ?? "", x, y };
}
