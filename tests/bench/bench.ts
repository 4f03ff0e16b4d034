/** npm run bench: how long, how exact, and both against the brute-force posterior. Figures, no verdicts: machines differ. */

import { absorb, initialBelief } from "../../src/domain/estimator/absorb";
import { advanced, openAccount, replay } from "../../src/domain/estimator/replay";
import { smallSample } from "../../src/domain/estimator/sampleSize";
import { countingEvents } from "../../src/domain/event";
import { planned, searchSample } from "../../src/domain/plan/plan";
import type { PlanRequest } from "../../src/domain/plan/request";
import { planFor } from "../../src/domain/plan/search";
import { standingAt } from "../../src/domain/plan/standing";
import { contentRange, fraction, litres } from "../../src/domain/quantity";
import { usualBudget } from "../../src/domain/warnings";
import { bruteForce } from "../accuracy/bruteForce";
import { histories } from "../accuracy/histories";
import { besideBarePage } from "./bare";
import { measureWaits } from "./browser";
import { measureDataLog } from "./dataLog";
import { measureFleet } from "./fleet";
import { measureImports } from "./hostileImport";
import { benchCar, longLog, product } from "./longLog";

const samples = 1_000_000;
const until = Date.parse("2026-06-01T12:00:00Z");

export async function main([stops = "1000", megabytes = "100", files = "2000"]: string[]): Promise<number> {
	accuracy();
	await longReplay(Number(stops));
	planning();
	const { plain, slowed } = await measureWaits(Number(stops));
	say(`\nIn Chromium, a log of ${stops} stops`, "as it is", "page 4x slower", "all 4x slower (reckoned)");
	say("  opens to the shown estimate, ms", ms(plain.open), ms(slowed.open), ms(4 * plain.open));
	say("  a key until the preview counts it, ms", ms(plain.preview), ms(slowed.preview), ms(4 * plain.preview));
	say("  longest task of the page while typing, ms", ms(plain.longestTask), ms(slowed.longestTask), "");
	await fleet(50);
	await bareRatios();
	await dataLog(Number(megabytes));
	await imports(Number(files));
	return 0;
}

/** A log of a year; a phone's processor is about four times slower than this. */
async function bareRatios(): Promise<void> {
	const { app, bare } = await besideBarePage(50, 4);
	say("\nBeside a bare Preact page, pages 4x slower", "app, ms", "bare, ms", "ratio");
	say("  from navigation to the first picture", ms(app.start), ms(bare.start), (app.start / bare.start).toFixed(1));
	say("  from the tap until it is kept", ms(app.save), ms(bare.save), (app.save / bare.save).toFixed(1));
}

async function fleet(cars: number): Promise<void> {
	const { plain, slowed } = await measureFleet(cars);
	say(`\nThe list of ${cars} cars`, "as it is", "page 4x slower");
	say("  from the tap until all are shown, ms", ms(plain.tapped), ms(slowed.tapped));
	say("  the same, the app not yet started, ms", ms(plain.started), ms(slowed.started));
}

async function imports(files: number): Promise<void> {
	const { imported, refused, faults, worstMs, worst, memory } = await measureImports(files);
	say(`\n${imported + refused} mangled log files: imported, refused`, String(imported), String(refused));
	say("  slowest, ms", ms(worstMs), `  (${worst})`);
	say("  most memory for one, MB", memory.toFixed(0));
	for (const fault of faults) say(`  FAULT: ${fault}`);
}

async function dataLog(megabytes: number): Promise<void> {
	const { rows, seconds, longestTask, longestWork, longestGap, memory } = await measureDataLog(megabytes, 4);
	say(`\nA data log of ${megabytes} MB, ${rows} rows, page 4x slower: until the reading, s`, seconds.toFixed(1));
	say("  longest task of the page, ms", ms(longestTask));
	say("  of that at work, ms", ms(longestWork));
	say("  longest time between two pictures, ms", ms(longestGap));
	if (!memory) return;
	const { before, most } = memory;
	say("  memory of the renderer, MB", "before", "at the most");
	say("    with what it shares", before.resident.toFixed(0), most.resident.toFixed(0));
	say("    by itself", before.own.toFixed(0), most.own.toFixed(0));
}

/** The estimator beside the oracle, history by history. */
function accuracy(): void {
	say("History", "estimator, ms", `brute force of ${samples}, ms`, "ratio", "quantiles off by", "chances off by");
	for (const { name, car, events } of histories) {
		const [entries, own] = timed(() => [...replay(car, events)]);
		const [truth, brute] = timed(() => bruteForce(car, events, { samples, seed: 1 }));
		let quantiles = 0;
		let chances = 0;
		for (const [i, { estimate }] of entries.entries()) {
			for (const field of ["low", "median", "high"] as const) {
				quantiles = Math.max(quantiles, Math.abs(estimate[field] - truth[i][field]));
			}
			for (const field of ["below", "above"] as const) {
				chances = Math.max(chances, Math.abs((estimate[field] ?? 0) - (truth[i][field] ?? 0)));
			}
		}
		say(name.slice(0, 40), ms(own), ms(brute), (brute / own).toFixed(1), quantiles.toFixed(4), chances.toFixed(4));
	}
}

async function longReplay(stops: number): Promise<void> {
	const counting = countingEvents(longLog(stops, until));
	const [account, full] = timed(() =>
		counting.reduce((before, event) => advanced(before, event, benchCar).account, openAccount(benchCar)),
	);
	const [, one] = timed(() => advanced(account, { ...counting[counting.length - 1], id: "one more" }, benchCar));
	say(
		`\nA log of ${stops} stops, ${counting.length} events: full replay, ms`,
		ms(full),
		"per event",
		(full / counting.length).toFixed(1),
	);
	say("  one more event on top, ms", ms(one));
	say("  memory of the process, MB", (process.memoryUsage().rss / 1e6).toFixed(0));
}

/** "How much of each?" with three products on sale and 60 L to be poured in steps of half a litre. */
function planning(): void {
	const tank = { capacityL: litres(75) };
	const start = {
		kind: "start",
		id: "start",
		at: "2026-05-01T12:00:00Z",
		contents: { range: contentRange(0.09, 0.1) },
		gauge: fraction(0.2),
	} as const;
	// An account past its youth.
	const before = { ...absorb(initialBelief("bench", tank), start, tank, smallSample).belief, age: 50 };
	const visit = { stop: "stop", at: "2026-05-04T12:00:00Z", place: "Place 1", gauge: fraction(0.1) };
	const request: PlanRequest = {
		offers: ["gasoline-e10", "gasoline-e15", "flex-51-83"].map((id) => ({ product: product(id) })),
		fullness: { kind: "litres", litres: litres(60) },
		target: {
			window: contentRange(0.26, 0.34),
			aim: fraction(0.3),
			budgets: { lean: usualBudget, knock: usualBudget },
		},
		handling: { step: litres(0.5), minimum: litres(1) },
		pours: 2,
	};
	const search = middle(() => planFor(standingAt(before, visit, request.offers, tank, searchSample), request));
	const checked = middle(() => planned(before, visit, request, tank));
	say("\nPlanning 60 L of three products by half litres, ms", "as it is", "all 4x slower (reckoned)");
	say("  search", ms(search), ms(4 * search));
	say("  search, and held against the account", ms(checked), ms(4 * checked));
}

/** Middle time of several runs, ms. */
function middle(work: () => unknown): number {
	const times = Array.from({ length: 15 }, () => timed(work)[1]);
	return times.sort((a, b) => a - b)[7];
}

function timed<T>(work: () => T): [result: T, ms: number] {
	const start = performance.now();
	const result = work();
	return [result, performance.now() - start];
}

function ms(value: number): string {
	return value.toFixed(0);
}

function say(...cells: string[]): void {
	console.log(cells.map((cell, i) => (i === 0 ? cell.padEnd(46) : cell.padStart(16))).join(""));
}
