/**
 * A car's messages on a NATS server with JetStream (2.9 or later), over a WebSocket. Loaded only where replication is on. The
 * few requests of JetStream that it takes are written out: a car's rights allow no others, and a client that knows more of
 * JetStream asks for more.
 */
import {
	headers,
	jwtAuthenticator,
	type Msg,
	type NatsConnection,
	type Subscription,
	wsconnect,
} from "@nats-io/nats-core";
import { fromSeed } from "@nats-io/nkeys";
import { base64url } from "../share/frame";
import type { Access } from "../share/liveCode";
import { claimsText, userSeed } from "./credentials";
import { settable } from "./settable";
import { inboxOf, nextSubject, openSubject, stream, subjectOf } from "./subjects";
import { type Arrived, type Reading, type Refusal, RefusedByServer, type Wire } from "./wire";

const connectMs = 10_000;
const answerMs = 10_000;
/** Messages asked for at a time. */
const fetched = 500;
/** How long the server holds a request that it has nothing for. */
const holdMs = 50_000;
/** A consumer that nobody asks anything of is forgotten by the server. */
const forgottenMs = 180_000;

/** Rejects with a RefusedByServer, or another error where there is no way to it. `onLost` hears once it is gone. */
export async function connectTo(access: Access, onLost: () => void): Promise<Wire> {
	const seed = userSeed(access.seed);
	const claims = claimsText({ ...access, user: fromSeed(seed).getPublicKey() });
	const prefix = inboxOf(access.token);
	let nats: NatsConnection;
	try {
		nats = await wsconnect({
			servers: access.server,
			authenticator: jwtAuthenticator(`${claims}.${base64url(access.signature)}`, seed),
			inboxPrefix: prefix,
			timeout: connectMs,
			reconnect: false,
			// Others of a cluster may stand where the app's policy does not let it go.
			ignoreClusterUpdates: true,
			pingInterval: 30_000,
			maxPingOut: 2,
			name: "heeltap",
		});
	} catch (error) {
		throw refusalIn(error, access);
	}
	let lost: unknown = null;
	const readings = new Set<{ fail(error: unknown): void }>();
	const gone = (error: unknown) => {
		lost ??= error;
		for (const reading of readings) reading.fail(lost);
		onLost();
	};
	nats.closed().then((error) => gone(error ? refusalIn(error, access) : new Error("the connection was closed")));
	(async () => {
		for await (const status of nats.status()) {
			if (status.type !== "error") continue;
			gone(refusalIn(status.error, access));
			nats.close().catch(() => {});
		}
	})().catch(() => {});

	async function asked(subject: string, body: unknown): Promise<Record<string, unknown>> {
		if (lost) throw lost;
		const answer = await nats.request(subject, JSON.stringify(body), { timeout: answerMs, noMux: false });
		return answered(answer);
	}
	return {
		async send(messageId, data) {
			if (lost) throw lost;
			const told = headers();
			told.set("Nats-Msg-Id", messageId);
			try {
				answered(await nats.request(subjectOf(access.token), data, { timeout: answerMs, headers: told }));
			} catch (error) {
				throw lost ?? refusalIn(error, access);
			}
		},
		async read(from) {
			const reading = readingFrom(nats, access.token, asked);
			readings.add(reading);
			try {
				await reading.begin(from);
			} catch (error) {
				throw lost ?? refusalIn(error, access);
			}
			return reading;
		},
		async close() {
			await nats.close().catch(() => {});
		},
	};
}

type Asked = (subject: string, body: unknown) => Promise<Record<string, unknown>>;

function readingFrom(nats: NatsConnection, token: string, asked: Asked) {
	let waiting: Arrived[] = [];
	let pending = 0;
	let failure: unknown = null;
	let stopped = false;
	let turned = settable();
	let consumer = "";
	let inbox: Subscription | null = null;
	/** The next message of the stream, and of the consumer: a hole between two of its messages means that one was lost. */
	let nextSeq = 1;
	let nextOfConsumer = 1;
	let left = 0;
	let watch: ReturnType<typeof setTimeout> | undefined;

	function stir(): void {
		turned.resolve();
		turned = settable();
	}
	function fail(error: unknown): void {
		failure ??= error;
		clearTimeout(watch);
		stir();
	}
	async function begin(from: number): Promise<void> {
		nextSeq = from;
		nextOfConsumer = 1;
		inbox?.unsubscribe();
		consumer = base64url(crypto.getRandomValues(new Uint8Array(16)));
		const { num_pending } = await asked(openSubject(consumer, token), {
			stream_name: stream,
			config: {
				name: consumer,
				filter_subject: subjectOf(token),
				deliver_policy: "by_start_sequence",
				opt_start_seq: from,
				ack_policy: "none",
				inactive_threshold: forgottenMs * 1e6,
				mem_storage: true,
				num_replicas: 1,
			},
		});
		if (stopped) return;
		pending = Number(num_pending ?? 0);
		const address = `${inboxOf(token)}.${consumer}`;
		inbox = nats.subscribe(address, { callback: (error, message) => (error ? fail(error) : arrive(message)) });
		fetch();
	}
	function fetch(): void {
		if (stopped || failure) return;
		left = fetched;
		nats.publish(nextSubject(consumer), JSON.stringify({ batch: fetched, expires: holdMs * 1e6 }), {
			reply: `${inboxOf(token)}.${consumer}`,
		});
		rewatch();
	}
	/** Whatever goes wrong on the server's side, it then goes on from the last message with a new consumer. */
	function rewatch(): void {
		clearTimeout(watch);
		watch = setTimeout(() => begin(nextSeq).catch(fail), pending > 0 ? answerMs : holdMs + answerMs);
	}
	function arrive(message: Msg): void {
		if (stopped || failure) return;
		const code = message.headers?.code ?? 0;
		// Nothing has come while the server held the request (408), it was replaced (409), or nobody is there (503).
		if (code > 0 && !message.reply) {
			if (code === 503) fail(new RefusedByServer("noStream"));
			else if (code === 408 || code === 404) fetch();
			else begin(nextSeq).catch(fail);
			return;
		}
		// $JS.ACK.STREAM.CONSUMER.DELIVERED.SEQ.CONSUMERSEQ.TIME.PENDING, with two tokens more in a domain.
		const parts = (message.reply ?? "").split(".");
		const [seq, ofConsumer, , behind] = parts.slice(-4).map(Number);
		if (!(seq > 0) || parts.length < 9 || !message.reply?.includes(`.${consumer}.`)) return;
		if (ofConsumer !== nextOfConsumer) {
			begin(nextSeq).catch(fail);
			return;
		}
		nextOfConsumer++;
		nextSeq = seq + 1;
		pending = behind;
		waiting.push({ seq, mark: parts[parts.length - 2], data: message.data });
		stir();
		if (--left === 0) fetch();
		else rewatch();
	}
	return {
		begin,
		fail,
		behind: () => waiting.length + pending,
		take(most: number): readonly Arrived[] {
			const taken = waiting.slice(0, most);
			waiting = waiting.slice(most);
			return taken;
		},
		async news(): Promise<void> {
			if (failure) throw failure;
			if (waiting.length > 0) return;
			await turned.promise;
			if (failure) throw failure;
		},
		stop(): void {
			stopped = true;
			clearTimeout(watch);
			inbox?.unsubscribe();
		},
	} satisfies Reading & { begin(from: number): Promise<void>; fail(error: unknown): void };
}

/** What JetStream answers, or its error thrown. */
function answered(message: Msg): Record<string, unknown> {
	const answer = message.json<Record<string, unknown>>();
	const error = answer.error as { readonly code?: number; readonly err_code?: number } | undefined;
	if (!error) return answer;
	throw new RefusedByServer(refusals[error.err_code ?? 0] ?? "noStream");
}

/** JetStream's numbers of what it refuses. */
const refusals: Readonly<Record<number, Refusal>> = {
	10054: "tooLarge",
	10077: "full",
	10023: "full",
	10047: "full",
};

function refusalIn(error: unknown, { ends }: Access): unknown {
	if (error instanceof RefusedByServer) return error;
	const { name, message } = (error ?? {}) as Partial<Error>;
	const said = `${name} ${message}`;
	if (/expired/i.test(said)) return new RefusedByServer("ended");
	if (/authoriz|authentic|permission/i.test(said))
		return new RefusedByServer(ends !== null && ends * 1000 < Date.now() ? "ended" : "notAllowed");
	if (/no responders/i.test(said)) return new RefusedByServer("noStream");
	if (/payload/i.test(said)) return new RefusedByServer("tooLarge");
	return error;
}
