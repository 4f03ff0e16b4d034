import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { expect, test } from "vitest";

const src = join(import.meta.dirname, "../src");

/** Folders of src that each folder may import from; packages are free except in the domain. */
const allowed: Record<string, string[]> = {
	domain: [],
	store: ["domain"],
	share: ["domain", "store"],
	live: ["domain", "store", "share", "pwa"],
	keeper: ["domain", "store", "share", "live"],
	datalog: ["domain"],
	pwa: [],
	sw: [],
	app: ["domain", "store", "share", "live", "keeper", "datalog", "pwa"],
	cli: ["domain", "store", "share", "live", "keeper", "app/words"],
	tools: [],
};

const ceiling = 300;
/** Tables of data may be long. */
const tables: string[] = [];

const files = readdirSync(src, { recursive: true, encoding: "utf8" })
	.filter((path) => /\.(ts|tsx|mjs|css)$/.test(path))
	.map((path) => ({ path: path.replaceAll("\\", "/"), text: readFileSync(join(src, path), "utf8") }));
const code = files.filter(({ path }) => !path.endsWith(".css"));

test("imports follow the arrow: domain ← store ← share ← keeper ← app", () => {
	const breaches = code.flatMap(({ path, text }) =>
		importsOf(text).flatMap((name) => {
			const folder = folderOf(path);
			if (!name.startsWith(".")) return folder === "domain" ? [`src/${path} imports the package ${name}`] : [];
			const target = relative(src, resolve(src, dirname(path), name)).replaceAll("\\", "/");
			const fine = folderOf(target) === folder || allowed[folder]?.some((open) => target.startsWith(`${open}/`));
			return fine ? [] : [`src/${path} imports src/${target}, and ${folder} may not import ${folderOf(target)}`];
		}),
	);
	expect(breaches).toEqual([]);
});

test(`no file of src is longer than ${ceiling} lines`, () => {
	const long = files
		.filter(({ path }) => !tables.includes(path))
		.map(({ path, text }) => ({ path, lines: text.trimEnd().split("\n").length }))
		.filter(({ lines }) => lines > ceiling)
		.map(({ path, lines }) => `src/${path} has ${lines} lines: split it by concept`);
	expect(long).toEqual([]);
});

test("files are named after one concept", () => {
	const vague = code.filter(({ path }) => /(^|\/)(index|utils?|helpers?|common|misc)\.tsx?$/.test(path));
	expect(vague.map(({ path }) => `src/${path} says nothing by its name`)).toEqual([]);
});

test("the domain has no clock and no chance of its own", () => {
	const impure = /\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|\bperformance\b|\bcrypto\b/;
	const breaches = code
		.filter(({ path, text }) => folderOf(path) === "domain" && impure.test(withoutComments(text)))
		.map(({ path }) => `src/${path} reads the clock or draws by itself: take the time or the seed as an argument`);
	expect(breaches).toEqual([]);
});

function folderOf(path: string): string {
	return path.split("/")[0] ?? "";
}

function importsOf(text: string): string[] {
	const forms = /(?:\bfrom|\bimport|\bimport\(|\bnew URL\()\s*["']([^"']+)["']/g;
	return [...withoutComments(text).matchAll(forms)].map((match) => match[1] ?? "");
}

function withoutComments(text: string): string {
	return text.replace(/\/\*[\s\S]*?\*\//g, "").replace(/^\s*\/\/.*$/gm, "");
}
