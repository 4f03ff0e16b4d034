/**
 * npm run crash [-- FAULT ENGINE ROUNDS SEED]: ends browsers in the middle of saving, hundreds of times, and prints what
 * was lost. FAULT is `kill`, `power`, or `power-relaxed`, which shows that a power cut would be noticed: there the app's
 * writes do not wait for the disk, and what was saved must be gone from the database.
 */
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildApp } from "../e2e/build";
import { chromium } from "../engines/chromium";
import { firefox } from "../engines/firefox";
import { canMount, killingDisk, powerDisk } from "./disk";
import { crashRounds } from "./rounds";

const makers = { chromium, firefox };
const all = [
	["kill", "chromium", 300],
	["kill", "firefox", 100],
	["power", "chromium", 50],
	["power", "firefox", 50],
	["power-relaxed", "chromium", 5],
	["power-relaxed", "firefox", 5],
] as const;

export async function main([fault, engine, rounds, seed = "long"]: string[]): Promise<number> {
	const asked = all.filter(([f, e]) => (!fault || f === fault) && (!engine || e === engine));
	if (asked.length === 0) throw new RangeError(`no such fault or engine: ${fault} ${engine}`);
	const scratch = mkdtempSync(join(tmpdir(), "heeltap-crash-"));
	const [dist, relaxed] = ["dist", "relaxed"].map((name) => join(scratch, name));
	let bad = 0;
	try {
		buildApp(dist);
		relax(dist, relaxed);
		for (const [what, browser, usual] of asked) {
			if (what !== "kill" && !canMount()) {
				console.log(`${what}, ${browser}: not tried, for it takes root and loop devices`);
				bad++;
				continue;
			}
			const careless = what === "power-relaxed";
			const began = performance.now();
			const newDisk = what === "kill" ? killingDisk : powerDisk;
			const count = rounds === undefined ? usual : Number(rounds);
			const tally = await crashRounds(makers[browser], careless ? relaxed : dist, count, seed, newDisk);
			const { faults, ...counts } = tally;
			console.log(JSON.stringify({ what, browser, ...counts, faults: faults.length, minutes: minutesSince(began) }));
			if (!careless) for (const text of faults) console.log(`  ${text}`);
			if (careless ? tally.damaged === 0 : faults.length > 0) bad++;
		}
	} finally {
		rmSync(scratch, { recursive: true, force: true });
	}
	return bad === 0 ? 0 : 1;
}

/** The app, but for its writes: they do not wait for the disk. */
function relax(dist: string, folder: string): void {
	cpSync(dist, folder, { recursive: true });
	let strict = 0;
	for (const name of readdirSync(join(folder, "assets")).filter((name) => name.endsWith(".js"))) {
		const file = join(folder, "assets", name);
		const text = readFileSync(file, "utf8").replace(/(["'`])strict\1/g, () => {
			strict++;
			return "`relaxed`";
		});
		writeFileSync(file, text);
	}
	if (strict === 0) throw new Error("the built app asks for no durability that could be relaxed");
}

function minutesSince(began: number): number {
	return Math.round((performance.now() - began) / 6000) / 10;
}
