import { afterEach, describe, expect, test, vi } from "vitest";
import { copyingTo } from "../../src/store/copying";
import { folderOf, rescueHere } from "../../src/store/fileSystem";
import type { Head } from "../../src/store/head";
import { compactLines, foldLines, lineOf, newsFor, readLines } from "../../src/store/journal";
import { type Rescue, rescueIn } from "../../src/store/rescue";
import type { Written } from "../../src/store/written";
import { aCar, aFill, aLevel, aStart } from "../helpers/logs";
import { chance, memoryFolder, turns } from "../helpers/phone";

afterEach(() => {
	vi.unstubAllGlobals();
	vi.useRealTimers();
});

const head = (rev: number, fields: Partial<Head> = {}): Head => ({ rev, count: rev, sum: rev, car: 1, ...fields });
const written: readonly Written[] = [
	{ carId: "car", head: head(1), car: aCar() },
	{ carId: "car", head: head(2), events: [aStart()] },
	{ preference: "settings", value: { activeCar: "car" } },
	{ carId: "car", head: head(3), events: [aFill(), aLevel()] },
	{ carId: "car", head: head(4), car: aCar({ name: "Ä – ünï 🚗\nnext line" }) },
];
const whole = foldLines(written);

const eventsOf = (holdings: ReturnType<typeof foldLines>, carId = "car") =>
	[...(holdings.cars.get(carId)?.events.keys() ?? [])].sort();

describe("The journal", () => {
	test("gives back what was written, and counts everything once", () => {
		const text = written.map(lineOf).join("");
		expect(readLines(text)).toEqual(written);
		expect(foldLines(readLines(text + text))).toEqual(whole);
		expect(whole.cars.get("car")).toMatchObject({ car: { name: "Ä – ünï 🚗\nnext line" }, head: { rev: 4 } });
		expect(eventsOf(whole)).toEqual(["fill", "level", "start"]);
		expect(whole.preferences.get("settings")).toEqual({ activeCar: "car" });
	});

	test("means the same in any order of its lines, but for preferences", () => {
		expect(foldLines([...written].reverse())).toEqual(whole);
	});

	test("is whole up to the last line that was written in full, wherever it is cut off, and goes on from there", () => {
		const text = written.map(lineOf).join("");
		for (let length = 0; length <= text.length; length++) {
			const cut = text.slice(0, length);
			const kept = readLines(cut);
			expect(kept).toEqual(written.slice(0, kept.length));
			expect(readLines(cut + lineOf(written[1])).at(-1)).toEqual(written[1]);
		}
	});

	test("drops a line in which anything was changed, and no other", () => {
		const random = chance(5);
		const text = written.map(lineOf).join("");
		for (let trial = 0; trial < 300; trial++) {
			const at = Math.floor(random() * text.length);
			const spoilt = `${text.slice(0, at)}${text[at] === "~" ? "^" : "~"}${text.slice(at + 1)}`;
			const kept = readLines(spoilt);
			// A line break that goes takes two lines along.
			expect(kept.length).toBeGreaterThanOrEqual(written.length - 2);
			for (const line of kept) expect(written).toContainEqual(line);
		}
	});

	test("forgets a car that was removed, and holds only what came after if it came again", () => {
		const gone: Written = { carId: "car", head: head(5, { count: 0, sum: 0, car: null, since: 5 }) };
		const removed = foldLines([...written, gone]);
		expect(removed.cars.get("car")).toMatchObject({ car: undefined, head: { rev: 5 } });
		expect(eventsOf(removed)).toEqual([]);
		const again: Written = { carId: "car", head: head(6, { since: 5 }), car: aCar(), events: [aLevel()] };
		// Lines of two tabs may have crossed.
		for (const lines of [
			[...written, gone, again],
			[gone, again, ...written],
		])
			expect(eventsOf(foldLines(lines))).toEqual(["level"]);
	});

	test("says the same in fewer lines", () => {
		const many = Array.from({ length: 50 }, (_, i) => aFill({ id: `fill ${i}` }));
		const lines: Written[] = [...written, { carId: "car", head: head(5), events: many }];
		for (let i = 0; i < 200; i++) lines.push({ preference: "settings", value: { i } });
		const compact = compactLines(foldLines(lines));
		expect(foldLines(readLines(compact))).toEqual(foldLines(lines));
		expect(readLines(compact).length).toBeLessThan(7);
	});

	test("takes from the device what it lacks, and nothing where it lacks nothing", () => {
		expect(newsFor(whole, whole)).toEqual([]);
		const empty = foldLines([]);
		expect(foldLines(newsFor(empty, whole))).toEqual(whole);
		expect(foldLines([...written.slice(0, 3), ...newsFor(foldLines(written.slice(0, 3)), whole)])).toEqual(whole);
	});
});

describe("A rescue copy", () => {
	const made = () => {
		const folder = memoryFolder();
		return { folder, rescue: rescueIn(folder, turns()) };
	};

	test("is read as it was written, and only added to", async () => {
		const { folder, rescue } = made();
		expect((await rescue.read()).cars.size).toBe(0);
		let before = "";
		for (const line of written) {
			await rescue.write([line]);
			const [text] = folder.files.values();
			expect(text.startsWith(before)).toBe(true);
			before = text;
		}
		expect(folder.files.size).toBe(1);
		expect(await rescue.read()).toEqual(whole);
	});

	test("is made anew once most of it is superfluous", async () => {
		const { folder, rescue } = made();
		await rescue.write(written);
		for (let i = 0; i < 40; i++) await rescue.write([{ preference: "settings", value: "x".repeat(4000) + i }]);
		const before = await rescue.read();
		const [text] = folder.files.values();
		expect(folder.files.size).toBe(1);
		expect(text.length).toBeLessThan(10_000);
		expect(await rescue.read()).toEqual(before);
		await rescue.write([{ carId: "car", head: head(9), events: [aFill({ id: "later" })] }]);
		expect(eventsOf(await rescue.read())).toEqual(["fill", "later", "level", "start"]);
	});

	test("keeps nothing of a car that was removed, nor of its entries", async () => {
		const { folder, rescue } = made();
		await rescue.write(written);
		await rescue.write([{ carId: "car", head: head(5, { count: 0, sum: 0, car: null, since: 5 }) }]);
		expect([...folder.files.values()].join()).not.toMatch(/litres|next line/);
		expect([...(await rescue.read()).preferences.keys()]).toEqual(["settings"]);
	});

	test("holds everything wherever the app is killed while it is made anew", async () => {
		const lines: Written[] = [...written];
		for (let i = 0; i < 20; i++) lines.push({ preference: "settings", value: "x".repeat(4000) + i });
		const expected = foldLines(lines);
		const old = lines.map(lineOf).join("");
		const fresh = compactLines(expected);
		for (let length = 0; length <= fresh.length; length += 7) {
			const { folder, rescue } = made();
			folder.files.set("journal-1", old);
			folder.files.set("journal-2", fresh.slice(0, length));
			expect(await rescue.read()).toEqual(expected);
			expect(folder.files.size).toBe(1);
			expect(await rescue.read()).toEqual(expected);
		}
	});

	test("leaves the older file where there is no room for the newer one", async () => {
		const { folder } = made();
		folder.files.set("journal-1", written.map(lineOf).join(""));
		folder.files.set("journal-2", "");
		const full = rescueIn({ ...folder, append: () => Promise.reject(new Error("no room")) }, turns());
		expect(await full.read()).toEqual(whole);
		expect(foldLines(readLines(folder.files.get("journal-1") ?? ""))).toEqual(whole);
	});

	test("minds no file that is not its own", async () => {
		const { folder, rescue } = made();
		folder.files.set("notes.txt", "something else");
		await rescue.write(written);
		expect(await rescue.read()).toEqual(whole);
		expect(folder.files.get("notes.txt")).toBe("something else");
	});
});

describe("copyingTo", () => {
	const copied = (broken = false) => {
		const lines: Written[] = [];
		const rescue: Rescue = {
			read: async () => foldLines(lines),
			async write(more) {
				if (broken) throw new Error("no room");
				lines.push(...more);
			},
		};
		return { lines, copying: copyingTo(async () => rescue) };
	};

	test("writes a moment after the save, all that came together at once", async () => {
		vi.useFakeTimers();
		const { lines, copying } = copied();
		copying.note(written[0]);
		copying.note(written[1]);
		expect(lines).toEqual([]);
		await vi.advanceTimersByTimeAsync(1000);
		expect(lines).toEqual(written.slice(0, 2));
	});

	test("stops nothing where it can't write", async () => {
		const { copying } = copied(true);
		copying.note(written[0]);
		await expect(copying.settle()).resolves.toBeUndefined();
		const none = copyingTo(() => Promise.reject(new Error("barred")));
		none.note(written[0]);
		await expect(none.settle()).resolves.toBeUndefined();
		expect(await none.here()).toBeNull();
	});

	test("spares the preferences while something is missing", async () => {
		const { lines, copying } = copied();
		copying.spare(true);
		copying.note(written[2]);
		copying.note(written[1]);
		await copying.settle();
		expect(lines).toEqual([written[1]]);
	});
});

describe("The browser's file system", () => {
	/** A directory as browsers have it, with only one of the two ways of writing. */
	function aDirectory(way: "sync" | "stream") {
		const files = new Map<string, Uint8Array>();
		const calls: string[] = [];
		const content = (name: string) => files.get(name) ?? new Uint8Array();
		const put = (name: string, at: number, data: Uint8Array) => {
			const joined = new Uint8Array(Math.max(content(name).length, at + data.length));
			joined.set(content(name));
			joined.set(data, at);
			files.set(name, joined);
		};
		const handle = (name: string) => ({
			getFile: async () => ({ size: content(name).length, text: async () => new TextDecoder().decode(content(name)) }),
			...(way === "sync"
				? {
						createSyncAccessHandle: async () => ({
							getSize: () => content(name).length,
							write(data: Uint8Array, { at }: { at: number }) {
								put(name, at, data);
								return data.length;
							},
							flush: () => void calls.push("flush"),
							close: () => void calls.push("close"),
						}),
					}
				: {
						createWritable: async (options: unknown) => {
							calls.push(JSON.stringify(options));
							const parts: { position: number; data: Uint8Array }[] = [];
							return {
								write: async (part: { position: number; data: Uint8Array }) => void parts.push(part),
								async close() {
									for (const { position, data } of parts) put(name, position, data);
									calls.push("close");
								},
							};
						},
					}),
		});
		const directory = {
			async *keys() {
				yield* files.keys();
			},
			async getFileHandle(name: string, options?: { create: boolean }) {
				if (!files.has(name) && !options?.create) throw new DOMException("no such file", "NotFoundError");
				if (!files.has(name)) files.set(name, new Uint8Array());
				return handle(name);
			},
			removeEntry: async (name: string) => void files.delete(name),
		};
		return { directory, calls };
	}

	test.each(["sync", "stream"] as const)("holds the copy, written by way of a %s file", async (way) => {
		const { directory, calls } = aDirectory(way);
		const rescue = rescueIn(folderOf(directory as never), turns());
		await rescue.write(written.slice(0, 2));
		await rescue.write(written.slice(2));
		expect(await rescue.read()).toEqual(whole);
		expect(calls).toEqual(
			way === "sync"
				? ["flush", "close", "flush", "close"]
				: ['{"keepExistingData":true}', "close"].concat(['{"keepExistingData":true}', "close"]),
		);
	});

	test("says so where the disk takes only a part", async () => {
		const { directory, calls } = aDirectory("sync");
		const short = {
			...directory,
			getFileHandle: async () => ({
				createSyncAccessHandle: async () => ({
					getSize: () => 0,
					write: () => 3,
					flush: () => {},
					close: () => void calls.push("close"),
				}),
			}),
		};
		await expect(folderOf(short as never).append("journal-1", "a long line")).rejects.toThrow("no room left");
		expect(calls).toEqual(["close"]);
	});

	test("is one folder, used by one tab at a time", async () => {
		const { directory } = aDirectory("sync");
		const asked: string[] = [];
		const getDirectoryHandle = async (name: string) => {
			asked.push(name);
			return directory;
		};
		const request = (name: string, work: () => Promise<unknown>) => {
			asked.push(`lock ${name}`);
			return work();
		};
		vi.stubGlobal("navigator", { storage: { getDirectory: async () => ({ getDirectoryHandle }) }, locks: { request } });
		const rescue = await rescueHere("heeltap");
		await rescue?.write(written);
		expect(await rescue?.read()).toEqual(whole);
		expect(asked).toEqual(["heeltap-rescue", "lock heeltap-rescue", "lock heeltap-rescue"]);
	});

	test("is none where the browser has none, bars it, or never answers", async () => {
		for (const storage of [
			undefined,
			{},
			{ getDirectory: () => Promise.reject(new DOMException("", "SecurityError")) },
		]) {
			vi.stubGlobal("navigator", { storage });
			expect(await rescueHere("heeltap")).toBeNull();
		}
		vi.useFakeTimers();
		vi.stubGlobal("navigator", { storage: { getDirectory: () => new Promise(() => {}) } });
		const waiting = rescueHere("heeltap");
		await vi.advanceTimersByTimeAsync(6_000);
		expect(await waiting).toBeNull();
	});
});
