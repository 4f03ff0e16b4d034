/** Fifty cars with 10,000 entries, and a phone that was away for a year: what it takes on the server, measured. */
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { bytesIn, findingsIn } from "../browserPhones";
import { carLog, tellingWords } from "../carLogs";
import { type NatsServer, openNatsServer } from "../natsServer";
import { openLivePhone } from "../phones";

let server: NatsServer;

beforeAll(async () => {
	server = await openNatsServer();
});
afterAll(() => server?.remove());

const cars = 50;
const each = 200;

const onDisk = () => bytesIn(join(server.folder, "store"));

test("50 cars with 10,000 entries come to another phone, whole, and a year later what is new", async () => {
	const logs = Array.from({ length: cars }, (_, i) => carLog(i, "first", each));
	const first = await openLivePhone(logs);
	const began = Date.now();
	for (const { car } of logs) await first.ask({ do: "on", carId: car.id, access: server.invite().access });
	await first.caughtUp();
	const sent = Date.now();
	const name = "away for a year";
	const second = await openLivePhone([], name);
	for (const { car } of logs) {
		const { pairing } = await first.ask({ do: "pairing", carId: car.id, carName: car.name });
		if (pairing) await second.ask({ do: "join", pairing });
	}
	const total = async (phone: typeof first) => {
		const counts = await Promise.all(logs.map(({ car }) => phone.store.countEvents(car.id)));
		return counts.reduce((sum, count) => sum + count, 0);
	};
	await expect.poll(() => total(second), { timeout: 240_000, interval: 500 }).toBe(cars * each);
	const taken = Date.now();
	for (const { car, events } of logs) {
		expect((await second.store.events(car.id)).map(({ id }) => id).sort()).toEqual(events.map(({ id }) => id).sort());
		expect((await second.store.cars()).find(({ id }) => id === car.id)).toEqual(car);
	}
	await second.stop();

	// A year of the other phone's entries, and the server knows of none of its old connections.
	const year = Array.from({ length: cars }, (_, i) => carLog(i, "second", 90));
	for (const { car, events } of year) await first.store.append(car.id, events);
	await first.ask({ do: "wake" });
	await first.caughtUp();
	await first.stop();
	await server.kill();
	await server.start();
	const back = Date.now();
	const again = await openLivePhone([], name);
	await expect.poll(() => total(again), { timeout: 240_000, interval: 500 }).toBe(cars * (each + 90));
	const caught = Date.now();
	await again.stop();

	const { messages, bytes } = await server.facts();
	expect(messages).toBe(cars * (each + 90 + 1));
	const ids = logs.flatMap(({ car, events }) => [car.id, ...events.slice(0, 20).map(({ id }) => id)]);
	expect(findingsIn(join(server.folder, "store"), [...tellingWords, ...ids.slice(0, 200)])).toEqual([]);
	const memory = existsSync(`/proc/${server.processId()}/status`)
		? /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${server.processId()}/status`, "utf8"))?.[1]
		: "unknown";
	const seconds = (from: number, to: number) => `${((to - from) / 1000).toFixed(1)} s`;
	console.log(
		[
			`${messages} messages, ${bytes} bytes by the server's count (${(bytes / messages).toFixed(0)} each), ${onDisk()} on its disk`,
			`sent in ${seconds(began, sent)}, taken in ${seconds(sent, taken)}, a year's ${cars * 90} in ${seconds(back, caught)}`,
			`the server's memory after it: ${memory} kB`,
		].join("\n"),
	);
});
