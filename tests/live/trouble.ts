/** Trouble in an order that a seed decides: cuts, silences, half messages, and a server that dies. */
import { seedsFor, uniform } from "../../src/domain/random";
import type { Cutter } from "./cutter";
import type { NatsServer } from "./natsServer";

export interface Trouble {
	/** What was done how often. */
	readonly done: Readonly<Record<string, number>>;
	/** Resolves once all is well again. */
	stop(): Promise<void>;
}

interface Wanted {
	readonly seed: string;
	/** Longest time between two of them, ms. */
	readonly everyMs: number;
	/** Out of ten, how many times the server is killed. */
	readonly kills: number;
}

export function makeTrouble(cutter: Cutter, server: Pick<NatsServer, "kill" | "start">, wanted: Wanted): Trouble {
	const seeds = seedsFor(wanted.seed);
	const random = () => uniform(seeds);
	const done: Record<string, number> = {};
	let stopped = false;
	const pass = (ms: number) => new Promise((passed) => setTimeout(passed, ms));
	const acts: Readonly<Record<string, () => Promise<void>>> = {
		async cut() {
			cutter.cut();
		},
		async hold() {
			cutter.hold(true);
			await pass(500 + 2_500 * random());
			cutter.cut();
			cutter.hold(false);
		},
		async half() {
			cutter.cutAfter(Math.floor(20_000 * random()));
		},
		async away() {
			cutter.shut(true);
			cutter.cut();
			await pass(1_000 * random());
			cutter.shut(false);
		},
		async kill() {
			await server.kill();
			await pass(500 * random());
			await server.start();
		},
	};
	async function run(): Promise<void> {
		while (!stopped) {
			await pass(wanted.everyMs * (0.2 + 0.8 * random()));
			if (stopped) break;
			const others = ["cut", "hold", "half", "away"];
			const name = random() * 10 < wanted.kills ? "kill" : others[Math.floor(random() * others.length)];
			await acts[name]();
			done[name] = (done[name] ?? 0) + 1;
		}
		cutter.cutAfter(null);
	}
	const running = run();
	return {
		done,
		async stop() {
			stopped = true;
			await running;
		},
	};
}
