/** A phone that does what it likes: the credentials of an invitation on a plain client. */
import { jwtAuthenticator, type NatsConnection, wsconnect } from "@nats-io/nats-core";
import { fromSeed } from "@nats-io/nkeys";
import { WebSocket as NodeSocket } from "undici";
import { claimsText, userSeed } from "../../src/live/credentials";
import { inboxOf } from "../../src/live/subjects";
import { base64url } from "../../src/share/frame";
import type { Access } from "../../src/share/liveCode";

// Node 20 has none of its own.
globalThis.WebSocket ??= NodeSocket as never;

export async function rawClient(access: Access, claims: Partial<Access> = {}): Promise<NatsConnection> {
	const seed = userSeed(access.seed);
	const text = claimsText({ ...access, ...claims, user: fromSeed(seed).getPublicKey() });
	const nats = await wsconnect({
		servers: access.server,
		authenticator: jwtAuthenticator(`${text}.${base64url(access.signature)}`, seed),
		inboxPrefix: inboxOf(access.token),
		reconnect: false,
		ignoreClusterUpdates: true,
		timeout: 5_000,
	});
	// Refusals come as notes, and each would be said to nobody.
	(async () => {
		for await (const _ of nats.status());
	})().catch(() => {});
	return nats;
}

/** What the server answers, or why it does not. */
export async function asked(nats: NatsConnection, subject: string, body: unknown = ""): Promise<string> {
	try {
		const payload = typeof body === "string" ? body : JSON.stringify(body);
		return (await nats.request(subject, payload, { timeout: 1_000 })).string();
	} catch (error) {
		return (error as Error).message;
	}
}
