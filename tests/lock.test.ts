/** What `npm ci` installs is what was looked at: packages of the registry alone, known to the bit, and none of them runs code. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

interface Locked {
	readonly version?: string;
	readonly resolved?: string;
	readonly integrity?: string;
	readonly link?: boolean;
}

type Wanted = Readonly<Record<"dependencies" | "devDependencies", Readonly<Record<string, string>>>>;

const read = (name: string) => readFileSync(join(import.meta.dirname, "..", name), "utf8");
const lock: { readonly packages: Readonly<Record<string, Locked>> } = JSON.parse(read("package-lock.json"));
const { "": root, ...packages } = lock.packages;
const wanted: Wanted = JSON.parse(read("package.json"));

test("every package of the lock file is one of the registry, with a version and a SHA-512 of its contents", () => {
	const odd = Object.entries(packages).filter(
		([path, { version = "", integrity = "", resolved, link }]) =>
			!/^(.+\/)?node_modules\/(@[\w.-]+\/)?[\w.-]+$/.test(path) ||
			!/^\d+\.\d+\.\d+/.test(version) ||
			!/^sha512-[\w+/]{86}==$/.test(integrity) ||
			resolved !== undefined ||
			link === true,
	);
	expect(Object.keys(packages).length).toBeGreaterThan(100);
	expect(odd.map(([path]) => path)).toEqual([]);
});

test("package.json asks for exact versions, those of the lock file", () => {
	const asked = Object.entries({ ...wanted.dependencies, ...wanted.devDependencies });
	for (const [name, version] of asked) {
		expect(version, name).toMatch(/^\d+\.\d+\.\d+$/);
		expect(packages[`node_modules/${name}`]?.version, name).toBe(version);
	}
	expect(root).toMatchObject({ dependencies: wanted.dependencies, devDependencies: wanted.devDependencies });
});

test("npm is told to run nothing that a package brings", () => {
	expect(read(".npmrc").split("\n")).toEqual(expect.arrayContaining(["ignore-scripts=true", "save-exact=true"]));
});
