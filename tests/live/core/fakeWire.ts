/** A server in memory: one car's messages, and what a server may do to them. */
import { type Arrived, type Reading, RefusedByServer, type Wire } from "../../../src/live/wire";

export interface FakeServer {
	messages: { seq: number; mark: string; id: string; data: Uint8Array }[];
	/** Of the next message. */
	next: number;
	/** Ids that the server still knows as doubles. */
	recent: Set<string>;
	refuses: boolean;
	sends: number;
	connect(): Wire;
	/** Puts something in that no phone sent. */
	plant(data: Uint8Array): void;
	/** Goes back to what it had before the last so many messages; other cars' take their numbers. */
	loseTail(count: number): void;
	cut(): void;
}

export function fakeServer(): FakeServer {
	const listeners = new Set<() => void>();
	const cutters = new Set<() => void>();
	let time = 1;
	const server: FakeServer = {
		messages: [],
		next: 1,
		recent: new Set(),
		refuses: false,
		sends: 0,
		plant(data) {
			server.messages.push({ seq: server.next++, mark: String(time++), id: "", data });
			for (const listener of listeners) listener();
		},
		loseTail(count) {
			server.messages = server.messages.slice(0, server.messages.length - count);
			server.recent.clear();
			server.next += 5;
		},
		cut() {
			for (const cutter of [...cutters]) cutter();
		},
		connect() {
			if (server.refuses) throw new RefusedByServer("notAllowed");
			let gone = false;
			const wire: Wire = {
				async send(id, data) {
					if (gone) throw new Error("cut");
					server.sends++;
					if (server.recent.has(id)) return;
					server.recent.add(id);
					server.messages.push({ seq: server.next++, mark: String(time++), id, data });
					for (const listener of listeners) listener();
				},
				async read(from): Promise<Reading> {
					let at = from;
					let wake = () => {};
					let fail = (_error: Error) => {};
					const listener = () => wake();
					listeners.add(listener);
					cutters.add(() => {
						gone = true;
						fail(new Error("cut"));
					});
					const rest = () => server.messages.filter(({ seq }) => seq >= at);
					return {
						behind: () => rest().length,
						take(most): readonly Arrived[] {
							const taken = rest().slice(0, most);
							if (taken.length > 0) at = taken[taken.length - 1].seq + 1;
							return taken;
						},
						news: () =>
							new Promise<void>((done, failed) => {
								if (gone) failed(new Error("cut"));
								fail = failed;
								wake = done;
								if (rest().length > 0) done();
							}),
						stop: () => void listeners.delete(listener),
					};
				},
				async close() {},
			};
			return wire;
		},
	};
	return server;
}
