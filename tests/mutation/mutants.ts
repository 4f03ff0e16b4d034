/**
 * npm run mutants [-- SHARE SEED AREA]: changes the core in small ways, one at a time, and counts how many changes the tests
 * of the same area catch. All of it takes hours, so SHARE (0 to 1) of each file's pieces is drawn by SEED.
 */
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { seedsFor, uniform } from "../../src/domain/random";
import { areas } from "./areas";
import { equivalent } from "./equivalent";

/** A change must lie within one piece. */
const linesInAPiece = 25;
const report = "node_modules/.stryker/mutants.json";
const enough = 0.85;

interface Place {
	readonly line: number;
	readonly column: number;
}

interface Mutant {
	readonly file: string;
	readonly status: string;
	readonly statusReason?: string;
	readonly mutatorName: string;
	readonly replacement?: string;
	/** Lines and columns from 1. */
	readonly location: { readonly start: Place; readonly end: Place };
}

export async function main([share = "1", seed = "a", only]: string[]): Promise<number> {
	const asked = Object.entries(areas).filter(([name]) => !only || name === only);
	if (asked.length === 0) throw new RangeError(`no such area: ${only}; there are ${Object.keys(areas).join(", ")}`);
	let all = 0;
	let allCaught = 0;
	for (const [name, { source, tests }] of asked) {
		const files = readdirSync(source).filter((file) => file.endsWith(".ts"));
		const pieces = files.sort().flatMap((file) => piecesOf(`${source}/${file}`, Number(share), seed));
		if (pieces.length === 0) continue;
		const found = sorted(tried(name, pieces, tests));
		const { caught, late, same, alive } = found;
		const count = caught.length + late.length + alive.length;
		all += count;
		allCaught += caught.length;
		console.log(
			`${name}: ${caught.length} of ${count} caught, ${percent(caught.length, count)}; ${late.length} timed out, ` +
				`${alive.length} survived; besides ${same.length} equivalent, ${found.fixed.length} not tried`,
		);
		for (const mutant of [...late, ...alive]) console.log(`  ${told(mutant)}`);
	}
	if (all > 0) console.log(`in all: ${allCaught} of ${all} caught, ${percent(allCaught, all)}`);
	return all > 0 && allCaught >= enough * all ? 0 : 1;
}

function tried(area: string, pieces: readonly string[], tests: readonly string[]): Mutant[] {
	rmSync(report, { force: true });
	const run = ["stryker", "run", "tests/mutation/stryker.json", "--mutate", pieces.join()];
	const env = { ...process.env, HEELTAP_TESTS: tests.join(" ") };
	const { status } = spawnSync("npx", run, { env, stdio: ["ignore", 2, 2] });
	if (status !== 0) throw new Error(`the mutants of ${area} could not be tried: run npx ${run.join(" ")}`);
	const { files } = JSON.parse(readFileSync(report, "utf8")) as { files: Record<string, { mutants: Mutant[] }> };
	return Object.entries(files).flatMap(([file, { mutants }]) => mutants.map((mutant) => ({ ...mutant, file })));
}

function sorted(mutants: readonly Mutant[]) {
	const of = (...wanted: string[]) => mutants.filter(({ status }) => wanted.includes(status));
	// What runs round a hundred times as often as it should would never end. The clock alone proves nothing.
	const endless = ({ statusReason }: Mutant) => /^Hit limit/.test(statusReason ?? "");
	const timedOut = of("Timeout");
	const late = timedOut.filter((mutant) => !endless(mutant));
	const survived = of("Survived", "NoCoverage");
	return {
		caught: [...of("Killed"), ...timedOut.filter(endless)],
		late: late.filter((mutant) => !isEquivalent(mutant)),
		alive: survived.filter((mutant) => !isEquivalent(mutant)),
		same: [...late, ...survived].filter(isEquivalent),
		// Run once as a module begins, so that every test would have to run anew: tables, mostly.
		fixed: of("Ignored"),
	};
}

function isEquivalent({ file, location: { start, end }, replacement }: Mutant): boolean {
	const lines = readFileSync(file, "utf8")
		.split("\n")
		.slice(start.line - 1, end.line);
	const line = lines[0].trim();
	lines[lines.length - 1] = lines[lines.length - 1].slice(0, end.column - 1);
	lines[0] = lines[0].slice(start.column - 1);
	const change = `${lines.join("\n")} → ${replacement}`;
	return equivalent.some((each) => each.file === file && each.line === line && each.change === change);
}

function told({ status, file, location, mutatorName, replacement = "" }: Mutant): string {
	return `${status} ${file}:${location.start.line} ${mutatorName} ${replacement.replace(/\s+/g, " ").slice(0, 100)}`;
}

const percent = (part: number, whole: number) => `${((100 * part) / Math.max(1, whole)).toFixed(1)} %`;

function piecesOf(file: string, share: number, seed: string): string[] {
	const seeds = seedsFor(`${seed} ${file}`);
	const lines = readFileSync(join(process.cwd(), file), "utf8").split("\n").length;
	const starts = Array.from({ length: Math.ceil(lines / linesInAPiece) }, (_, i) => i * linesInAPiece + 1);
	const drawn = starts.filter(() => uniform(seeds) < share);
	if (drawn.length === starts.length) return [file];
	return drawn.map((start) => `${file}:${start}-${start + linesInAPiece - 1}`);
}
