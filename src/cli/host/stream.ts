/** The one stream: a subject per car, kept for ever, on the disk. */
import { type JetStreamManager, jetstreamManager } from "@nats-io/jetstream";
import { jwtAuthenticator } from "@nats-io/nats-core";
import { connect } from "@nats-io/transport-node";
import { stream } from "../../live/subjects";
import { mostEvents } from "../../store/limits";
import type { Choices } from "./config";
import { adminCredentials, type HostKeys } from "./keys";

const minute = 60e9;

export function streamConfig(replicas: number) {
	return {
		name: stream,
		subjects: ["heeltap.*"],
		storage: "file",
		retention: "limits",
		// Full is said to the one who sends; nothing old is thrown away.
		discard: "new",
		discard_new_per_subject: true,
		// A log's most entries, and as many changes of settings as anyone makes.
		max_msgs_per_subject: mostEvents + 5_000,
		max_msg_size: 128 * 1024,
		max_msgs: -1,
		max_bytes: -1,
		max_age: 0,
		// Phones read before they send, so it only serves two that send the same at the same moment.
		duplicate_window: 2 * minute,
		num_replicas: replicas,
		deny_delete: true,
		deny_purge: true,
		allow_rollup_hdrs: false,
		allow_direct: false,
	} as const;
}

/** Creates the stream, or brings it to its present form; waits until the server is there. Gives what it holds. */
export async function ensureStream(choices: Choices, keys: HostKeys, waitMs = 15_000): Promise<StreamFacts> {
	const { jwt, seed } = await adminCredentials(keys);
	const until = Date.now() + waitMs;
	for (;;) {
		try {
			const nats = await connect({
				servers: choices.commands,
				authenticator: jwtAuthenticator(jwt, seed),
				reconnect: false,
				timeout: 3_000,
			});
			try {
				return await ensured(await jetstreamManager(nats, { timeout: 8_000 }), choices.replicas);
			} finally {
				await nats.close();
			}
		} catch (error) {
			if (Date.now() > until) throw error;
			await new Promise((passed) => setTimeout(passed, 200));
		}
	}
}

export interface StreamFacts {
	readonly messages: number;
	readonly bytes: number;
}

async function ensured({ streams }: JetStreamManager, replicas: number): Promise<StreamFacts> {
	const config = streamConfig(replicas) as never;
	const there = await streams.info(stream).catch((error: { readonly message?: string }) => {
		if (/not found/.test(error.message ?? "")) return null;
		throw error;
	});
	const { state } = there ? await streams.update(stream, config) : await streams.add(config);
	return { messages: state.messages, bytes: state.bytes };
}
