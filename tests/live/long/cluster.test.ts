/** Three servers that each keep everything: one killed loses nothing, and phones go on with the others. */

import type { ChildProcess } from "node:child_process";
import { appendFileSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { prepare } from "../../../src/cli/host";
import { configText } from "../../../src/cli/host/config";
import { invitationFor } from "../../../src/cli/host/invitation";
import { tokensOf } from "../../../src/cli/host/keys";
import { ensureStream } from "../../../src/cli/host/stream";
import { carLog } from "../carLogs";
import { ended, freePorts, runServer } from "../natsServer";
import { openLivePhone } from "../phones";

const folder = mkdtempSync(join(tmpdir(), "heeltap-cluster-"));
const servers: (ChildProcess | null)[] = [];
let sockets: number[] = [];
let [ports, routes]: number[][] = [];
let host: Awaited<ReturnType<typeof prepare>>;

const configOf = (i: number) => join(folder, `server-${i}.conf`);
const run = (i: number) => {
	servers[i] = runServer(configOf(i), { HEELTAP_SERVER: `server-${i}` });
};
const pass = (ms: number) => new Promise((passed) => setTimeout(passed, ms));

beforeAll(async () => {
	const free = await freePorts(9);
	[sockets, ports, routes] = [free.slice(0, 3), free.slice(3, 6), free.slice(6)];
	host = await prepare(folder, {
		url: `ws://127.0.0.1:${sockets[0]}/live`,
		websocket: `127.0.0.1:${sockets[0]}`,
		commands: `127.0.0.1:${ports[0]}`,
		replicas: "3",
	});
	const tokens = await tokensOf(folder, host.keys, {});
	for (const i of [0, 1, 2]) {
		const choices = { ...host.choices, websocket: `127.0.0.1:${sockets[i]}`, commands: `127.0.0.1:${ports[i]}` };
		writeFileSync(configOf(i), configText(join(folder, `${i}`), choices, host.keys, tokens), { mode: 0o600 });
		const others = routes.map((port) => `nats://127.0.0.1:${port}`).join(", ");
		appendFileSync(configOf(i), `cluster { name: heeltap, listen: "127.0.0.1:${routes[i]}", routes: [${others}] }\n`);
		run(i);
	}
	await ensureStream(host.choices, host.keys, 60_000);
});
afterAll(async () => {
	for (const server of servers) await ended(server);
	rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
});

const each = 2_000;

test("one of three servers killed, and then another, loses nothing that a phone was told is kept", async () => {
	const accessAt = (i: number) => {
		const { access } = invitation;
		return { ...access, server: `ws://127.0.0.1:${sockets[i]}/live` };
	};
	const invitation = invitationFor(host.choices, host.keys, { app: "https://app.example/", now: Date.now() });
	const [mine, theirs] = [carLog(3, "first", each), carLog(3, "second", each)];
	const carId = mine.car.id;
	const first = await openLivePhone([mine]);
	const second = await openLivePhone([theirs]);
	await first.ask({ do: "on", carId, access: accessAt(1) });
	const { pairing } = await first.ask({ do: "pairing", carId, carName: "x" });
	if (!pairing) throw new Error("no pairing code");
	await second.ask({ do: "join", pairing: { ...pairing, access: accessAt(2) } });
	await pass(700);
	await ended(servers[0]);
	await pass(5_000);
	run(0);
	await ensureStream(host.choices, host.keys, 60_000);
	await pass(5_000);
	await ended(servers[1]);
	await pass(3_000);
	run(1);
	const count = async () => {
		for (const phone of [first, second]) await phone.ask({ do: "wake" });
		return [await first.store.countEvents(carId), await second.store.countEvents(carId)];
	};
	await expect.poll(count, { timeout: 120_000, interval: 1_000 }).toEqual([2 * each, 2 * each]);
	const ids = async (phone: typeof first) => (await phone.store.events(carId)).map(({ id }) => id).sort();
	expect(await ids(first)).toEqual(await ids(second));

	// And what the servers keep is whole without either phone.
	await first.stop();
	await second.stop();
	await ended(servers[2]);
	const third = await openLivePhone();
	await third.ask({ do: "join", pairing: { ...pairing, access: accessAt(0) } });
	await expect.poll(() => third.store.countEvents(carId), { timeout: 120_000, interval: 500 }).toBe(2 * each);
	const { messages, bytes } = await ensureStream(host.choices, host.keys, 60_000);
	console.log(`${messages} messages for ${2 * each} entries, ${bytes} bytes`);
	await third.stop();
});
