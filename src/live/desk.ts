/**
 * Runs the replication of all cars for which it is on. Of all tabs one does it for each car (Web Locks), and tells the others
 * how it stands. A connection that fails is tried again, later each time; a network that comes back, or a page that comes into
 * sight, is a reason to try at once.
 */
import { version } from "../pwa/version";
import type { Pairing } from "../share/liveCode";
import type { Store } from "../store/store";
import { type LiveCar, openNotes } from "./notes";
import { lackingAt } from "./outbox";
import { CarGoneError, replicate, type Standing } from "./replicate";
import { locked, type Run, runOf } from "./run";
import { newKey } from "./seal";
import { settable } from "./settable";
import { firstState, type LiveAnswer, type LiveAsk, type LiveState, liveChannel } from "./state";
import { RefusedByServer, type Wire } from "./wire";

export interface Desk {
	answer(ask: LiveAsk): Promise<LiveAnswer>;
}

export interface Means {
	readonly connect: (car: LiveCar, onLost: () => void) => Promise<Wire>;
	readonly now: () => number;
	/** Of the database and the channel. */
	readonly name?: string;
}

const realMeans: Means = {
	async connect({ access }, onLost) {
		// Some browsers remember that a script could not be loaded, and never try again.
		if (navigator.onLine === false) throw new Error("there is no network");
		return (await import("./natsWire")).connectTo(access, onLost);
	},
	now: () => Date.now(),
};

/** Between two tries, ms: the first soon, then rarer. */
const firstWaitMs = 1_000;
const longestWaitMs = 120_000;
/** A server that refuses is not asked every minute. */
const refusedWaitMs = 15 * 60_000;
/** More cars than this are not all connected at once: each is visited in turn. */
const mostConnections = 8;
/** How long a car is stayed with once there is nothing to do, and how long until the next visit. */
const lingerMs = 1_000;
const revisitMs = 2 * 60_000;

export async function openDesk(store: Store, means: Means = realMeans): Promise<Desk> {
	const name = means.name ?? liveChannel;
	const notes = await openNotes(name);
	const channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(name);
	const states = new Map<string, LiveState>();
	const running = new Map<string, Run>();
	let resting = false;
	let visits: Promise<unknown>[] = [];

	function tell(state: LiveState): void {
		states.set(state.carId, state);
		channel?.postMessage(state);
	}
	if (channel)
		channel.onmessage = ({ data }: MessageEvent<LiveState | "cars">) => {
			if (data === "cars") void begin();
			else if (!running.get(data.carId)?.locked) states.set(data.carId, data);
		};
	store.subscribe((carId) => {
		for (const run of running.values()) if (carId === null || carId === run.car.carId) run.stir();
	});

	async function begin(): Promise<void> {
		const cars = await notes.cars();
		for (const [carId, run] of running) {
			const now = cars.find((car) => car.carId === carId);
			if (now && now.access.token === run.car.access.token) continue;
			run.end();
			running.delete(carId);
			if (!now) states.delete(carId);
		}
		for (const car of cars) {
			if (running.has(car.carId) || resting) continue;
			const run = runOf(car);
			running.set(car.carId, run);
			if (!states.has(car.carId)) states.set(car.carId, firstState(car, await notes.progress(car.carId)));
			locked(`${name}/${car.carId}`, run, () => work(run)).catch(() => {});
		}
	}

	async function work(run: Run): Promise<void> {
		for (let failed = 0; !run.over; ) {
			const wait = await visited(run, failed);
			failed = wait.failed ? failed + 1 : 0;
			if (!run.over && wait.ms > 0) await run.woken(wait.ms, wait.byChange);
		}
	}

	/** One visit. How long to wait for the next, and whether it failed. */
	async function visited(run: Run, failed: number): Promise<{ ms: number; failed: boolean; byChange: boolean }> {
		const many = running.size > mostConnections;
		const seat = many ? await takeSeat() : () => {};
		let connected = false;
		try {
			await visit(run, many, () => {
				connected = true;
			});
			return { ms: many ? revisitMs : 0, failed: false, byChange: true };
		} catch (error) {
			if (error instanceof CarGoneError) {
				await notes.forget(run.car.carId);
				run.end();
				states.delete(run.car.carId);
				return { ms: 0, failed: false, byChange: false };
			}
			const refused = error instanceof RefusedByServer ? error.why : null;
			const first = firstState(run.car, await notes.progress(run.car.carId));
			const { waiting, since } = states.get(run.car.carId) ?? first;
			tell({
				...first,
				phase: refused ? "refused" : "offline",
				why: refused,
				waiting: await waitingFor(run.car).catch(() => waiting),
				since: since ?? means.now(),
			});
			const tries = connected ? 0 : failed;
			const ms = refused
				? refusedWaitMs
				: Math.min(longestWaitMs, firstWaitMs * 2 ** tries) * (0.75 + Math.random() / 2);
			return { ms, failed: !connected, byChange: false };
		} finally {
			seat();
		}
	}

	async function waitingFor(car: LiveCar): Promise<number> {
		return (await lackingAt(store, car.carId, await notes.known(car.carId)))?.length ?? 0;
	}

	async function visit(run: Run, brief: boolean, onConnected: () => void): Promise<void> {
		const lost = settable<never>();
		lost.promise.catch(() => {});
		const wire = await means.connect(run.car, () => lost.reject(new Error("the connection is gone")));
		const left = settable();
		let timer: ReturnType<typeof setTimeout> | undefined;
		const follow = ({ phase, waiting, progress }: Standing) => {
			onConnected();
			tell({ ...firstState(run.car, progress), phase, waiting, heard: means.now() });
			clearTimeout(timer);
			if (brief && phase === "caughtUp") timer = setTimeout(left.resolve, lingerMs);
		};
		try {
			const ended = Promise.race([run.ended, left.promise]);
			const around = { store, notes, version, now: means.now, tell: follow, changed: run.changed, ended };
			const working = replicate(run.car, wire, around);
			working.catch(() => {});
			await Promise.race([working, lost.promise.catch((error) => Promise.race([working, later(error)]))]);
		} finally {
			clearTimeout(timer);
			await wire.close();
		}
	}

	/** At most so many at once. */
	async function takeSeat(): Promise<() => void> {
		while (visits.length >= mostConnections) await Promise.race(visits);
		const left = settable();
		const visit: Promise<unknown> = left.promise.then(() => {
			visits = visits.filter((other) => other !== visit);
		});
		visits.push(visit);
		return left.resolve;
	}

	async function keep(car: LiveCar): Promise<void> {
		running.get(car.carId)?.end();
		running.delete(car.carId);
		await notes.keep(car);
		await begin();
		channel?.postMessage("cars");
	}

	await begin();
	return {
		async answer(ask) {
			switch (ask.do) {
				case "on":
					await keep({ carId: ask.carId, access: ask.access, key: newKey() });
					break;
				case "join":
					await keep({ carId: ask.pairing.carId, access: ask.pairing.access, key: ask.pairing.key });
					break;
				case "off":
					await notes.forget(ask.carId);
					await begin();
					channel?.postMessage("cars");
					break;
				case "rest":
					resting = true;
					for (const run of running.values()) run.end();
					running.clear();
					break;
				case "wake":
					resting = false;
					await begin();
					for (const run of running.values()) run.wake();
					break;
			}
			const cars = await notes.cars();
			const known = cars.map(async (car) => states.get(car.carId) ?? firstState(car, await notes.progress(car.carId)));
			return {
				states: await Promise.all(known),
				pairing: ask.do === "pairing" ? pairingOf(cars, ask.carId, ask.carName, means.now()) : null,
			};
		},
	};
}

/** A code that is shown is taken for a day. */
const pairingDays = 1;

function pairingOf(cars: readonly LiveCar[], carId: string, carName: string, now: number): Pairing | null {
	const car = cars.find((each) => each.carId === carId);
	const until = Math.floor(now / 1000) + pairingDays * 86_400;
	return car ? { access: car.access, key: car.key, carId, carName, until } : null;
}

/** A moment for what is under way to say why by itself. */
function later(error: Error): Promise<never> {
	return new Promise((_, fail) => setTimeout(() => fail(error), 500));
}
