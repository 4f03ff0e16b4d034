/**
 * npm run mutants [-- SHARE SEED AREA]: changes the core in small ways, one at a time, and counts how many changes the tests
 * of the same area catch. All of it takes hours, so SHARE (0 to 1) of each file's pieces is drawn by SEED.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { seedsFor, uniform } from "../../src/domain/random";

interface Area {
	/** Folder. */
	readonly source: string;
	readonly tests: string;
}

const areas: Readonly<Record<string, Area>> = {
	core: { source: "src/domain", tests: "tests/domain/*.test.ts" },
	engine: { source: "src/domain/engine", tests: "tests/domain/engine/*.test.ts" },
	readings: { source: "src/domain/readings", tests: "tests/domain/readings/*.test.ts" },
	datalog: { source: "src/domain/datalog", tests: "tests/domain/datalog/*.test.ts" },
	plan: { source: "src/domain/plan", tests: "tests/{domain/plan,plan}/*.test.ts" },
	estimator: { source: "src/domain/estimator", tests: "tests/{domain/estimator,accuracy}/*.test.ts" },
	why: { source: "src/domain/why", tests: "tests/domain/why/*.test.ts" },
	doubt: { source: "src/domain/doubt", tests: "tests/doubt/*.test.ts" },
};

/** A change must lie within one piece. */
const linesInAPiece = 25;
const report = "node_modules/.stryker/mutants.json";

interface Mutant {
	readonly status: string;
	readonly mutatorName: string;
	readonly replacement?: string;
	readonly location: { readonly start: { readonly line: number } };
}

export async function main([share = "1", seed = "a", only]: string[]): Promise<number> {
	const asked = Object.entries(areas).filter(([name]) => !only || name === only);
	if (asked.length === 0) throw new RangeError(`no such area: ${only}; there are ${Object.keys(areas).join(", ")}`);
	let all = 0;
	let caught = 0;
	for (const [name, { source, tests }] of asked) {
		const files = readdirSync(source).filter((file) => file.endsWith(".ts"));
		const pieces = files.sort().flatMap((file) => piecesOf(`${source}/${file}`, Number(share), seed));
		if (pieces.length === 0) continue;
		rmSync(report, { force: true });
		const run = ["stryker", "run", "tests/mutation/stryker.json", "--mutate", pieces.join()];
		const env = { ...process.env, HEELTAP_TESTS: tests };
		const { status } = spawnSync("npx", run, { env, stdio: ["ignore", "ignore", "inherit"] });
		if (status !== 0) throw new Error(`the mutants of ${name} could not be tried: run npx ${run.join(" ")}`);
		const seen = JSON.parse(readFileSync(report, "utf8")) as { files: Record<string, { mutants: Mutant[] }> };
		const mutants = Object.entries(seen.files).flatMap(([file, { mutants }]) =>
			mutants.map((mutant) => ({ file, ...mutant })),
		);
		const tried = mutants.filter(({ status }) => /^(Killed|Timeout|Survived|NoCoverage)$/.test(status));
		const alive = tried.filter(({ status }) => status === "Survived" || status === "NoCoverage");
		all += tried.length;
		caught += tried.length - alive.length;
		console.log(`${name}: ${tried.length - alive.length} of ${tried.length} caught`);
		for (const { file, location, mutatorName, replacement = "", status } of alive)
			console.log(
				`  ${status} ${file}:${location.start.line} ${mutatorName} ${replacement.replace(/\s+/g, " ").slice(0, 60)}`,
			);
	}
	if (all > 0) console.log(`in all: ${caught} of ${all} caught, ${((100 * caught) / all).toFixed(1)} %`);
	return all > 0 && caught >= 0.85 * all ? 0 : 1;
}

function piecesOf(file: string, share: number, seed: string): string[] {
	const seeds = seedsFor(`${seed} ${file}`);
	const lines = readFileSync(join(process.cwd(), file), "utf8").split("\n").length;
	const starts = Array.from({ length: Math.ceil(lines / linesInAPiece) }, (_, i) => i * linesInAPiece + 1);
	const drawn = starts.filter(() => uniform(seeds) < share);
	if (drawn.length === starts.length) return [file];
	return drawn.map((start) => `${file}:${start}-${start + linesInAPiece - 1}`);
}
