/** What happens between a phone and a server that does what it should not. */
import "fake-indexeddb/auto";
import { expect, test } from "vitest";
import { packedContents } from "../../../src/live/contents";
import { type LiveNotes, openNotes } from "../../../src/live/notes";
import { CarGoneError, replicate, type Standing } from "../../../src/live/replicate";
import { newKey, sealerOf } from "../../../src/live/seal";
import type { Access } from "../../../src/share/liveCode";
import { packed } from "../../../src/share/pack";
import { openStore, type Store } from "../../../src/store/store";
import type { Log } from "../../../src/store/wire";
import { aCalibration, aCar, aFill, aFlash, aLevel, aStart, aVoid } from "../../helpers/logs";
import { type FakeServer, fakeServer } from "./fakeWire";

const key = newKey();
const access: Access = {
	server: "wss://cars.example",
	token: "AAAAAAAAAAAAAAAAAAAAAA",
	account: new Uint8Array(32),
	signer: new Uint8Array(32),
	seed: new Uint8Array(32),
	issued: 1,
	ends: null,
	signature: new Uint8Array(64),
};
const live = { carId: "car", access, key };
const sealer = await sealerOf(key, access.token);
const sealed = (value: unknown) => sealer.seal(packed(value));

interface Phone {
	readonly store: Store;
	readonly notes: LiveNotes;
	/** One connection, until nothing is left to do. */
	visit(server: FakeServer, version?: string): Promise<Standing>;
	ids(): Promise<string[]>;
}

let phones = 0;

async function aPhone(log?: Log): Promise<Phone> {
	const name = `replicating ${++phones}`;
	const store = await openStore({ name });
	const notes = await openNotes(`${name} live`);
	if (log) await store.merge(log);
	return {
		store,
		notes,
		async visit(server, version = "1") {
			let leave = () => {};
			const ended = new Promise<void>((done) => {
				leave = done;
			});
			let last: Standing | undefined;
			await replicate(live, server.connect(), {
				store,
				notes,
				version,
				now: () => 1_000,
				tell(standing) {
					last = standing;
					if (standing.phase === "caughtUp") leave();
				},
				changed: () => new Promise(() => {}),
				ended,
			});
			if (!last) throw new Error("nothing was told");
			return last;
		},
		ids: async () => (await store.events("car")).map(({ id }) => id).sort(),
	};
}

const log: Log = { car: aCar(), events: [aStart(), aFill(), aLevel()] };

test("a log comes to a phone that has nothing, and back, once each", async () => {
	const server = fakeServer();
	const [one, two] = [await aPhone(log), await aPhone()];
	await one.visit(server);
	expect(server.messages).toHaveLength(4);
	await two.visit(server);
	expect(await two.ids()).toEqual(["fill", "level", "start"]);
	await two.store.append("car", [aFill({ id: "new", stop: "s" })]);
	await two.visit(server);
	await one.visit(server);
	expect(await one.ids()).toEqual(["fill", "level", "new", "start"]);
	for (const phone of [one, two]) await phone.visit(server);
	expect(server.messages).toHaveLength(5);
});

test("an entry that both phones got otherwise is sent by the first alone", async () => {
	const server = fakeServer();
	const [one, two] = [await aPhone(log), await aPhone(log)];
	await one.visit(server);
	server.recent.clear();
	await two.visit(server);
	expect(server.messages).toHaveLength(4);
});

test("what a server lost at its end it gets again, from whichever phone has it", async () => {
	const server = fakeServer();
	const [one, two] = [await aPhone(log), await aPhone()];
	await one.visit(server);
	await two.visit(server);
	server.loseTail(2);
	// Others wrote meanwhile: the numbers say nothing.
	server.plant(new Uint8Array(9));
	const standing = await two.visit(server);
	expect(standing.progress.refused.damaged).toBe(1);
	const third = await aPhone();
	await third.visit(server);
	expect(await third.ids()).toEqual(["fill", "level", "start"]);
});

test("a server that begins anew is filled anew, and nothing is there twice", async () => {
	const server = fakeServer();
	const one = await aPhone(log);
	await one.visit(server);
	const other = fakeServer();
	await one.visit(other);
	expect(other.messages).toHaveLength(4);
	await one.visit(other);
	expect(other.messages).toHaveLength(4);
});

test("damaged, foreign, contradicting and newer messages are counted, and the rest goes on", async () => {
	const server = fakeServer();
	const one = await aPhone(log);
	await one.visit(server);
	server.plant(server.messages[1].data.map((byte, i) => (i === 40 ? byte ^ 1 : byte)));
	server.plant(await (await sealerOf(newKey(), access.token)).seal(packed({ events: [aFill({ id: "foreign" })] })));
	server.plant(
		await (await sealerOf(key, "BBBBBBBBBBBBBBBBBBBBBB")).seal(packed({ events: [aFill({ id: "foreign" })] })),
	);
	server.plant(await sealed({ car: aCar({ id: "another" }) }));
	server.plant(await sealed({ events: [aFill({ litres: 99 })] }));
	server.plant(await sealed({ events: [{ id: "n", at: "2026-06-09T12:00:00Z", kind: "teleport" }] }));
	server.plant(Uint8Array.from([9, 9, 9]));
	server.plant(new Uint8Array());
	server.plant(server.messages[2].data);
	server.plant(await sealed({ events: [aFill({ id: "after", stop: "s" })] }));
	const two = await aPhone();
	const { progress } = await two.visit(server);
	expect(progress.refused).toEqual({ damaged: 5, newer: 2, contradicting: 1, again: 2 });
	expect(await two.ids()).toEqual(["after", "fill", "level", "start"]);
	expect((await two.store.events("car")).find(({ id }) => id === "fill")).toMatchObject({ litres: 15.5 });
});

test("what a newer version wrote is taken after the update", async () => {
	const server = fakeServer();
	const one = await aPhone(log);
	await one.visit(server);
	server.plant(Uint8Array.from([9, 9, 9]));
	const late = await sealed({ events: [aFill({ id: "late", stop: "s" })] });
	server.plant(late);
	expect((await one.visit(server, "1")).progress.refused.newer).toBe(1);
	// As if the later version could read it.
	server.messages[4].data = await sealed({ events: [aFill({ id: "understood", stop: "s2" })] });
	expect((await one.visit(server, "1")).progress.refused.newer).toBe(1);
	expect(await one.ids()).not.toContain("understood");
	expect((await one.visit(server, "2")).progress.refused.newer).toBe(0);
	expect(await one.ids()).toContain("understood");
});

test("what names something that has not come yet waits for it, over a restart", async () => {
	const server = fakeServer();
	const one = await aPhone(log);
	await one.visit(server);
	server.plant(await sealer.seal(packedContents({ event: aVoid({ id: "v", target: "later" }) })));
	server.plant(await sealer.seal(packedContents({ event: aFlash({ id: "f", calibration: "e85" }) })));
	expect((await one.visit(server)).progress.held).toHaveLength(2);
	expect(await one.ids()).toEqual(["fill", "level", "start"]);
	server.plant(await sealer.seal(packedContents({ event: aFill({ id: "later", stop: "s" }) })));
	expect((await one.visit(server)).progress.held).toHaveLength(1);
	server.plant(
		await sealer.seal(packedContents({ car: aCar({ calibrations: [aCalibration(), aCalibration({ id: "e85" })] }) })),
	);
	expect((await one.visit(server)).progress.held).toHaveLength(0);
	expect(await one.ids()).toEqual(["f", "fill", "later", "level", "start", "v"]);
});

test("settings changed on both phones come to the later one on both", async () => {
	const server = fakeServer();
	const [one, two] = [await aPhone(log), await aPhone()];
	await one.visit(server);
	await two.visit(server);
	await one.store.saveCar(aCar({ name: "Blue" }), "2026-06-10T12:00:00Z");
	await two.store.saveCar(aCar({ name: "Red", currency: "EUR" }), "2026-06-11T12:00:00Z");
	for (const phone of [one, two, one, two, one]) await phone.visit(server);
	const before = server.messages.length;
	for (const phone of [one, two]) await phone.visit(server);
	expect(server.messages).toHaveLength(before);
	expect(await one.store.cars()).toEqual(await two.store.cars());
	expect((await one.store.cars())[0]).toMatchObject({ name: "Red", currency: "EUR" });
});

test("a car that was removed from this phone is not brought back", async () => {
	const server = fakeServer();
	const one = await aPhone(log);
	await one.visit(server);
	await one.store.removeCar("car");
	await expect(one.visit(server)).rejects.toThrow(CarGoneError);
	server.plant(await sealed({ events: [aFill({ id: "later", stop: "s" })] }));
	await expect(one.visit(server)).rejects.toThrow(CarGoneError);
	expect(await one.store.cars()).toEqual([]);
});

test("cut after any number of messages, everything is there once after the next visit", async () => {
	for (const after of [1, 2, 3]) {
		const server = fakeServer();
		const one = await aPhone(log);
		const { connect } = server;
		server.connect = () => {
			const wire = connect();
			return {
				...wire,
				async send(id, data) {
					// The last one is kept, and its answer lost.
					if (server.messages.length < after) await wire.send(id, data);
					if (server.messages.length >= after) throw new Error("cut");
				},
			};
		};
		await expect(one.visit(server)).rejects.toThrow("cut");
		server.connect = connect;
		server.recent.clear();
		await one.visit(server);
		expect(server.messages, `cut after ${after}`).toHaveLength(4);
	}
});
