import { cpSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { subjectOf } from "../../src/live/subjects";
import { aCar, aFill, aStart, aVoid } from "../helpers/logs";
import { carLog, theCar } from "./carLogs";
import { type NatsServer, openNatsServer } from "./natsServer";
import { type LivePhone, openLivePhone } from "./phones";
import { asked, rawClient } from "./rawClient";

let server: NatsServer;
const phones: LivePhone[] = [];

beforeAll(async () => {
	server = await openNatsServer();
});
afterAll(async () => {
	for (const phone of phones) await phone.stop();
	await server?.remove();
});

async function aPhone(...args: Parameters<typeof openLivePhone>): Promise<LivePhone> {
	const phone = await openLivePhone(...args);
	phones.push(phone);
	return phone;
}

const idsOf = async ({ store }: LivePhone) => (await store.events("car")).map(({ id }) => id).sort();

test("a second phone comes to have the car, and each gets what the other adds", async () => {
	const { access } = server.invite();
	const first = await aPhone([{ car: aCar(), events: [aStart(), aFill(), aVoid({ target: "fill" })] }]);
	await first.ask({ do: "on", carId: "car", access });
	await first.caughtUp();
	const { pairing } = await first.ask({ do: "pairing", carId: "car", carName: "The grey one" });
	const second = await aPhone();
	if (pairing) await second.ask({ do: "join", pairing });
	await second.caughtUp();
	expect(await idsOf(second)).toEqual(["fill", "start", "void"]);
	expect(await second.store.cars()).toEqual([aCar()]);

	await second.store.append("car", [aFill({ id: "theirs", stop: "s2", at: "2026-06-08T12:00:00Z" })]);
	await first.store.append("car", [aFill({ id: "mine", stop: "s3", at: "2026-06-09T12:00:00Z" })]);
	await first.store.saveCar(aCar({ name: "The blue one" }), "2026-06-10T12:00:00Z");
	await expect.poll(() => idsOf(first), { timeout: 10_000 }).toEqual(["fill", "mine", "start", "theirs", "void"]);
	await expect.poll(() => idsOf(second), { timeout: 10_000 }).toEqual(["fill", "mine", "start", "theirs", "void"]);
	await expect.poll(async () => (await second.store.cars())[0].name, { timeout: 10_000 }).toBe("The blue one");
	await expect.poll(async () => (await first.state("car"))?.phase).toBe("caughtUp");
});

test("a server that was restored from an older backup gets again what it lacks, and so does a phone that comes then", async () => {
	const { access } = server.invite();
	const carId = theCar(9).id;
	const { car, events } = carLog(9, "first", 60);
	const phone = await aPhone([{ car, events: events.slice(0, 40) }]);
	await phone.ask({ do: "on", carId, access });
	await phone.caughtUp();
	const kept = join(server.folder, "store");
	await server.kill();
	cpSync(kept, `${kept}-backup`, { recursive: true });
	await server.start();
	await phone.ask({ do: "wake" });
	await phone.store.append(carId, events.slice(40));
	await phone.caughtUp();
	const { messages } = await server.facts();

	await server.kill();
	rmSync(kept, { recursive: true });
	renameSync(`${kept}-backup`, kept);
	expect((await server.start()).messages).toBe(messages - 20);
	// Another car's entries take the numbers of those that are lost.
	const other = server.invite().access;
	const nats = await rawClient(other);
	for (let i = 0; i < 30; i++) await asked(nats, subjectOf(other.token), `other ${i}`);
	await nats.close();
	await phone.ask({ do: "wake" });
	await expect.poll(async () => (await server.facts()).messages, { timeout: 20_000 }).toBe(messages + 30);
	const { pairing } = await phone.ask({ do: "pairing", carId, carName: car.name });
	const late = await aPhone();
	if (pairing) await late.ask({ do: "join", pairing });
	await expect.poll(() => late.store.countEvents(carId), { timeout: 20_000 }).toBe(60);
});
