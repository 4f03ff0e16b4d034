/** A bad network between phones and a server: lets bytes through, cuts connections, and holds them, as it is told. */
import { type AddressInfo, connect, createServer, type Socket } from "node:net";

export interface Cutter {
	readonly port: number;
	/** How many connections have been cut so far. */
	readonly cuts: number;
	/** Ends all that is open; half a message may have gone through. */
	cut(): void;
	/** Lets nothing through in either direction, and says nothing of it. */
	hold(held: boolean): void;
	/** Lets nobody in. */
	shut(closed: boolean): void;
	/** Bytes from the phones after which the connection is cut that carries them; null: none. */
	cutAfter(bytes: number | null): void;
	close(): Promise<void>;
}

export async function openCutter(target: number): Promise<Cutter> {
	const pairs = new Set<readonly [Socket, Socket]>();
	let [held, closed] = [false, false];
	let budget: number | null = null;
	let cuts = 0;
	const server = createServer((near) => {
		const far = connect(target, "127.0.0.1");
		const pair = [near, far] as const;
		if (closed) near.destroy();
		pairs.add(pair);
		const end = () => {
			pairs.delete(pair);
			for (const socket of pair) socket.destroy();
		};
		for (const [from, to, outwards] of [
			[near, far, true],
			[far, near, false],
		] as const) {
			from.on("error", end);
			from.on("close", end);
			from.on("data", (bytes) => {
				if (outwards && budget !== null) {
					budget -= bytes.length;
					if (budget < 0) {
						budget = null;
						cuts++;
						// What has gone through of it stays gone through.
						to.write(bytes.subarray(0, Math.floor(bytes.length / 2)), end);
						return;
					}
				}
				to.write(bytes);
			});
			if (held) from.pause();
		}
	});
	await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
	return {
		port: (server.address() as AddressInfo).port,
		get cuts() {
			return cuts;
		},
		cut() {
			cuts += pairs.size;
			for (const [near, far] of [...pairs]) {
				near.destroy();
				far.destroy();
			}
		},
		hold(now) {
			held = now;
			for (const pair of pairs) for (const socket of pair) held ? socket.pause() : socket.resume();
		},
		shut(now) {
			closed = now;
		},
		cutAfter(bytes) {
			budget = bytes;
		},
		async close() {
			const gone = new Promise((done) => server.close(done));
			for (const [near, far] of [...pairs]) {
				near.destroy();
				far.destroy();
			}
			await gone;
		},
	};
}
