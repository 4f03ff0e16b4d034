/** A connection that speaks WebDriver BiDi (W3C), as Firefox does of itself: no driver program stands in between. */
import { WebSocket } from "undici";

export interface Bidi {
	/** Throws with the browser's words, or when the browser goes away. */
	send<Answer = unknown>(method: string, params?: object): Promise<Answer>;
	on(method: string, heard: (params: never) => void): void;
	close(): void;
}

interface Message {
	readonly id?: number;
	readonly type?: "success" | "error" | "event";
	readonly result?: unknown;
	readonly error?: string;
	readonly message?: string;
	readonly method?: string;
	readonly params?: unknown;
}

export async function connectBidi(address: string): Promise<Bidi> {
	const socket = new WebSocket(address);
	const waiting = new Map<number, { done(answer: unknown): void; fail(error: Error): void }>();
	const listeners = new Map<string, (params: never) => void>();
	let sent = 0;
	socket.addEventListener("message", ({ data }) => {
		const message: Message = JSON.parse(String(data));
		if (message.type === "event") return listeners.get(message.method ?? "")?.(message.params as never);
		const asked = waiting.get(message.id ?? 0);
		waiting.delete(message.id ?? 0);
		if (message.type === "error") asked?.fail(new Error(`${message.error}: ${message.message}`));
		else asked?.done(message.result);
	});
	socket.addEventListener("close", () => {
		for (const { fail } of waiting.values()) fail(new Error("the browser is gone"));
		waiting.clear();
	});
	await new Promise<void>((done, fail) => {
		socket.addEventListener("open", () => done());
		socket.addEventListener("error", () => fail(new Error(`nobody answers at ${address}`)));
	});
	return {
		send: (method, params = {}) =>
			new Promise((done, fail) => {
				if (socket.readyState !== WebSocket.OPEN) return fail(new Error("the browser is gone"));
				waiting.set(++sent, { done: (answer) => done(answer as never), fail });
				socket.send(JSON.stringify({ id: sent, method, params }));
			}),
		on: (method, heard) => void listeners.set(method, heard),
		close: () => socket.close(),
	};
}
