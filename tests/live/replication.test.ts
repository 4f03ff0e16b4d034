import { afterAll, beforeAll, expect, test } from "vitest";
import { aCar, aFill, aStart, aVoid } from "../helpers/logs";
import { type NatsServer, openNatsServer } from "./natsServer";
import { type LivePhone, openLivePhone } from "./phones";

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
