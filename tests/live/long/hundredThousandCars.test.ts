/** What 100,000 cars and a thousand phones at once take of one server: the figures that README reckons its costs from. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { headers, jwtAuthenticator } from "@nats-io/nats-core";
import { connect } from "@nats-io/transport-node";
import { afterAll, beforeAll, expect, test } from "vitest";
import { adminCredentials } from "../../../src/cli/host/keys";
import { connectTo } from "../../../src/live/natsWire";
import { subjectOf } from "../../../src/live/subjects";
import type { Wire } from "../../../src/live/wire";
import { base64url } from "../../../src/share/frame";
import { bytesIn } from "../browserPhones";
import { type NatsServer, openNatsServer } from "../natsServer";
import "../rawClient";

let server: NatsServer;

beforeAll(async () => {
	server = await openNatsServer();
});
afterAll(() => server?.remove());

const cars = 100_000;
const phones = 500;
/** A sealed entry of one block. */
const sealed = 157;

const memoryKB = () =>
	Number(/VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${server.processId()}/status`, "utf8"))?.[1] ?? 0);
const onDisk = () => bytesIn(join(server.folder, "store"));
const random = (length: number) => crypto.getRandomValues(new Uint8Array(length));

test("100,000 cars' subjects and 500 phones fit a small server", async () => {
	const before = memoryKB();
	const { jwt, seed } = await adminCredentials(server.keys);
	const host = await connect({ servers: server.choices.commands, authenticator: jwtAuthenticator(jwt, seed) });
	for (let i = 0; i < cars; i++) {
		const told = headers();
		told.set("Nats-Msg-Id", base64url(random(16)));
		host.publish(subjectOf(base64url(random(16))), random(sealed), { headers: told });
		if (i % 2_000 === 0) await host.flush();
	}
	await host.flush();
	await host.close();
	await expect.poll(async () => (await server.facts()).messages, { timeout: 120_000 }).toBe(cars);
	const { bytes } = await server.facts();
	const filled = memoryKB();

	await server.kill();
	const down = Date.now();
	await server.start();
	const up = Date.now();
	const fresh = memoryKB();
	const wires: Wire[] = [];
	for (let i = 0; i < phones; i++) {
		const wire = await connectTo(server.invite().access, () => {});
		await wire.read(1);
		wires.push(wire);
	}
	const connected = memoryKB();
	for (const wire of wires) await wire.close();
	console.log(
		[
			`${cars} cars of one entry: ${(bytes / cars).toFixed(0)} bytes each by the server's count, ${onDisk()} on its disk`,
			`memory: ${before} kB empty, ${filled} kB with them just sent (all within the window of doubles), ${fresh} kB after a restart of ${up - down} ms`,
			`${phones} phones: ${((connected - fresh) / phones).toFixed(0)} kB each`,
		].join("\n"),
	);
	expect(filled).toBeLessThan(1_000_000);
	expect(bytes / cars).toBeLessThan(300);
});
