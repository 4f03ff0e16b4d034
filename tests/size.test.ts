import { readdirSync, readFileSync } from "node:fs";
import { join, posix } from "node:path";
import { gzipSync } from "node:zlib";
import { expect, inject, test } from "vitest";

const dist = inject("dist");

/** Gzipped bytes of everything a first visit runs before it can show the tank: page code, its static imports, workers. */
const firstLoadBudget = 45_000;

const scripts = readdirSync(dist, { recursive: true, encoding: "utf8" })
	.map((path) => path.replaceAll("\\", "/"))
	.filter((path) => path.endsWith(".js"));

test(`the JavaScript of a first load is ${firstLoadBudget / 1000} kB or less, gzipped`, () => {
	const first = firstLoad();
	const rows = scripts.map((path) => ({ path, bytes: gzipped(path), when: whenLoaded(path, first) }));
	const total = (when: string) => rows.filter((row) => row.when === when).reduce((sum, row) => sum + row.bytes, 0);

	const lines = [
		...rows,
		...["first load", "later", "service worker"].map((when) => ({ path: "total", bytes: total(when), when })),
	];
	console.log(
		lines.map(({ path, bytes, when }) => `${when.padEnd(15)} ${kB(bytes).padStart(7)} kB  ${path}`).join("\n"),
	);

	expect([...first].filter((path) => path.includes("worker"))).toHaveLength(1);
	expect(total("first load")).toBeLessThanOrEqual(firstLoadBudget);
});

test("the page holds no code, no style and no address of its own", () => {
	const html = read("index.html");
	expect(html).not.toMatch(/<script(?![^>]*\ssrc=)/);
	expect(html).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
	expect(html).not.toMatch(/https?:/);
	expect(html).toContain("Content-Security-Policy");
});

function firstLoad(): Set<string> {
	const found = new Set<string>();
	const visit = (path: string) => {
		if (found.has(path)) return;
		found.add(path);
		for (const next of loadedBy(path)) visit(next);
	};
	for (const [, path = ""] of read("index.html").matchAll(/(?:src|href)="\.\/([^"]+\.js)"/g)) visit(path);
	return found;
}

/** Scripts a script needs at once: static imports, and the keeper's worker, which is started with the app. */
function loadedBy(path: string): string[] {
	const text = read(path);
	const imports = [...text.matchAll(/(?:\bfrom|\bimport)\s*["'`](\.[^"'`]+\.js)["'`]/g)];
	const workers = [...text.matchAll(/\bkeeper:\s*new URL\(\s*[^"'`]*["'`]([^"'`]+\.js)["'`]/g)];
	return [...imports, ...workers]
		.map(([, name = ""]) => posix.join(posix.dirname(path), name))
		.filter((name) => scripts.includes(name));
}

function whenLoaded(path: string, first: Set<string>): string {
	if (path === "sw.js") return "service worker";
	return first.has(path) ? "first load" : "later";
}

function read(path: string): string {
	return readFileSync(join(dist, path), "utf8");
}

function gzipped(path: string): number {
	return gzipSync(read(path), { level: 9 }).length;
}

function kB(bytes: number): string {
	return (bytes / 1000).toFixed(1);
}
