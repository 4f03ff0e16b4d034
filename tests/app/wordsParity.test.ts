/** Every area of words is whole in German, and said in German. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";

const home = join(import.meta.dirname, "../../src/app/words");
const areasIn = (folder: string) =>
	readdirSync(join(home, folder))
		.filter((name) => name.endsWith(".ts"))
		.map((name) => name.slice(0, -3));
const areas = areasIn("en");

/** Said alike in both languages, on purpose. */
const alike = new Set<string>([
	"blend.products.flex-e85-eu",
	"dataLog.columns.in",
	"dataLog.inStretches",
	"dataLog.banks.0",
	"dataLog.banks.1",
	"engine.properties.heat.unit",
	"engine.properties.density.unit",
	"engine.properties.vapourPressure.unit",
	"live.title",
	"live.server",
	"live.fileName",
	"money.hundredKm",
	"picker.name",
	"screens.live",
	"screens.tank",
	"shell.tabs.tank",
]);

test("both languages have the same areas, and each has its way in", () => {
	expect(areasIn("de")).toEqual(areas);
	expect(areasIn(".")).toEqual(expect.arrayContaining(areas));
	expect(areas.length).toBeGreaterThan(20);
});

describe.each(areas)("%s", async (area) => {
	const english = leaves((await import(`${home}/en/${area}.ts`)).words);
	const german = leaves((await import(`${home}/de/${area}.ts`)).words);

	test("has the same words in German, of the same kind, with as many arguments", () => {
		expect([...german.keys()]).toEqual([...english.keys()]);
		for (const [path, said] of english) {
			const other = german.get(path);
			expect(typeof other, path).toBe(typeof said);
			if (typeof said !== "function" || typeof other !== "function") continue;
			expect(other.length, path).toBe(said.length);
		}
	});

	test("is said in German", () => {
		const same = [...english].filter(
			([path, said]) => lettersIn(said) && String(german.get(path)) === String(said) && !alike.has(`${area}.${path}`),
		);
		expect(same.map(([path, said]) => `${area}.${path}: ${said}`)).toEqual([]);
	});
});

test("what is alike on purpose is still there and still alike", async () => {
	for (const name of alike) {
		const [area = "", ...path] = name.split(".");
		const [english, german] = await Promise.all(
			["en", "de"].map(async (tongue) => leaves((await import(`${home}/${tongue}/${area}.ts`)).words)),
		);
		expect(english?.get(path.join(".")), name).toBeDefined();
		expect(String(german?.get(path.join("."))), name).toBe(String(english?.get(path.join("."))));
	}
});

type Said = string | ((...args: never[]) => unknown);

/** Everything said, by its path. */
function leaves(words: object, path = ""): Map<string, Said> {
	const found = new Map<string, Said>();
	for (const [name, value] of Object.entries(words)) {
		const here = path === "" ? name : `${path}.${name}`;
		if (typeof value === "string" || typeof value === "function") found.set(here, value);
		else for (const [inner, said] of leaves(value, here)) found.set(inner, said);
	}
	return found;
}

/** Whether any words are in it: a template that only puts its arguments in order belongs to no language. */
function lettersIn(said: Said): boolean {
	if (typeof said === "string") return /\p{Letter}{2}/u.test(said);
	const literals = String(said).match(/`(?:[^`\\]|\\.)*`|"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'/g) ?? [];
	return literals.some((literal) =>
		/\p{Letter}{2}/u.test(literal.replace(/\$\{[^{}]*\}/g, "").replace(/\\u\w{4}|\\n/g, "")),
	);
}
