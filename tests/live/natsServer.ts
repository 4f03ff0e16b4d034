/** A real nats-server as a host runs it: prepared by the host's own command, in a folder of its own. */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { prepare } from "../../src/cli/host";
import type { Choices } from "../../src/cli/host/config";
import { type Invitation, invitationFor } from "../../src/cli/host/invitation";
import type { HostKeys } from "../../src/cli/host/keys";
import { ensureStream, type StreamFacts } from "../../src/cli/host/stream";
import { findNatsServer } from "../../src/tools/browser.mjs";

export interface NatsServer {
	readonly folder: string;
	readonly choices: Choices;
	readonly keys: HostKeys;
	/** Of its WebSocket. */
	readonly port: number;
	invite(options?: { readonly url?: string; readonly ends?: number }): Invitation;
	/** Ends it as a power cut of the machine's does, its disk apart. */
	kill(): Promise<void>;
	start(): Promise<StreamFacts>;
	facts(): Promise<StreamFacts>;
	processId(): number | undefined;
	remove(): Promise<void>;
}

export async function openNatsServer(): Promise<NatsServer> {
	const folder = mkdtempSync(join(tmpdir(), "heeltap-nats-"));
	const [port, commands] = await freePorts(2);
	const { choices, keys } = await prepare(folder, {
		url: `ws://127.0.0.1:${port}/live`,
		websocket: `127.0.0.1:${port}`,
		commands: `127.0.0.1:${commands}`,
	});
	let server: ChildProcess | null = null;
	const start = async () => {
		server = runServer(join(folder, "nats-server.conf"));
		return ensureStream(choices, keys);
	};
	const kill = async () => {
		const killed = server;
		server = null;
		await ended(killed);
	};
	await start();
	return {
		folder,
		choices,
		keys,
		port,
		invite: ({ url = choices.url, ends } = {}) =>
			invitationFor({ ...choices, url }, keys, { app: "https://app.example/", now: Date.now(), ends: ends ?? null }),
		kill,
		start,
		facts: () => ensureStream(choices, keys),
		processId: () => server?.pid,
		async remove() {
			await kill();
			rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
		},
	};
}

export function runServer(config: string, env: Readonly<Record<string, string>> = {}): ChildProcess {
	const program = findNatsServer();
	if (!program) throw new Error("the tests need nats-server: run node src/tools/browser.mjs nats");
	return spawn(program, ["-c", config], { stdio: "ignore", env: { ...process.env, ...env } });
}

export async function ended(server: ChildProcess | null): Promise<void> {
	if (!server || server.exitCode !== null || server.signalCode !== null) return;
	const gone = new Promise((done) => server.once("exit", done));
	server.kill("SIGKILL");
	await gone;
}

/** Ports that were free a moment ago. */
export async function freePorts(count: number): Promise<number[]> {
	const servers = await Promise.all(
		Array.from({ length: count }, async () => {
			const server = createServer();
			await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
			return server;
		}),
	);
	const ports = servers.map((server) => (server.address() as { readonly port: number }).port);
	await Promise.all(servers.map((server) => new Promise((done) => server.close(done))));
	return ports;
}
