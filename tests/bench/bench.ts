/** npm run bench: how long, how exact, and both against the brute-force posterior. Figures, no verdicts: machines differ. */

import { advanced, openAccount, replay } from "../../src/domain/estimator/replay";
import { countingEvents } from "../../src/domain/event";
import { bruteForce } from "../accuracy/bruteForce";
import { histories } from "../accuracy/histories";
import { measureWaits } from "./browser";
import { benchCar, longLog } from "./longLog";

const samples = 1_000_000;
const until = Date.parse("2026-06-01T12:00:00Z");

export async function main([stops = "1000"]: string[]): Promise<number> {
	accuracy();
	await longReplay(Number(stops));
	const { plain, slowed } = await measureWaits(Number(stops));
	say(`\nIn Chromium, a log of ${stops} stops`, "as it is", "page 4x slower", "all 4x slower (reckoned)");
	say("  opens to the shown estimate, ms", ms(plain.open), ms(slowed.open), ms(4 * plain.open));
	say("  a key until the preview counts it, ms", ms(plain.preview), ms(slowed.preview), ms(4 * plain.preview));
	say("  longest task of the page while typing, ms", ms(plain.longestTask), ms(slowed.longestTask), "");
	return 0;
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
