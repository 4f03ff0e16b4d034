import { afterAll, beforeAll, expect, test } from "vitest";
import { carLog } from "./carLogs";
import { type Cutter, openCutter } from "./cutter";
import { type NatsServer, openNatsServer } from "./natsServer";
import { openLivePhone } from "./phones";
import { makeTrouble } from "./trouble";

let server: NatsServer;
let cutter: Cutter;

beforeAll(async () => {
	server = await openNatsServer();
	cutter = await openCutter(server.port);
});
afterAll(async () => {
	await cutter?.close();
	await server?.remove();
});

const each = 200;

test("cut, held, cut within a message, and with the server killed, nothing is lost and nothing there twice", async () => {
	const { access } = server.invite({ url: `ws://127.0.0.1:${cutter.port}/live` });
	const [mine, theirs] = [carLog(7, "first", each), carLog(7, "second", each)];
	const carId = mine.car.id;
	const first = await openLivePhone([mine]);
	const second = await openLivePhone([theirs]);
	const trouble = makeTrouble(cutter, server, { seed: "cuts", everyMs: 900, kills: 1 });
	await first.ask({ do: "on", carId, access });
	const { pairing } = await first.ask({ do: "pairing", carId, carName: "x" });
	if (pairing) await second.ask({ do: "join", pairing });
	await new Promise((passed) => setTimeout(passed, 4_000));
	await trouble.stop();
	for (const phone of [first, second]) await phone.ask({ do: "wake" });
	await Promise.all([first.caughtUp(), second.caughtUp()]);
	const count = async () => [await first.store.countEvents(carId), await second.store.countEvents(carId)];
	await expect.poll(count, { timeout: 20_000 }).toEqual([2 * each, 2 * each]);
	expect(Object.values(trouble.done).reduce((sum, many) => sum + many, 0)).toBeGreaterThan(2);
	expect((await server.facts()).messages).toBe(2 * each + 1);
	await first.stop();
	await second.stop();
});
