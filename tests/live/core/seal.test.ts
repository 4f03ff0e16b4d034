import { expect, test } from "vitest";
import { newKey, sealerOf } from "../../../src/live/seal";

const token = "AAAAAAAAAAAAAAAAAAAAAA";
const key = newKey();
const bytes = (text: string) => new TextEncoder().encode(text);

test("what is sealed is opened by the same key and token, and is never twice the same", async () => {
	const sealer = await sealerOf(key, token);
	const [one, two] = [await sealer.seal(bytes("half a tank")), await sealer.seal(bytes("half a tank"))];
	expect(one).not.toEqual(two);
	expect(await sealer.open(one)).toEqual({ ok: true, value: bytes("half a tank") });
	expect(new TextDecoder("latin1").decode(one)).not.toContain("half");
});

test("sizes are told in steps of 128 bytes", async () => {
	const sealer = await sealerOf(key, token);
	const sizes = await Promise.all(
		[1, 40, 126, 127, 128, 300].map(async (n) => (await sealer.seal(new Uint8Array(n))).length),
	);
	const around = 1 + 12 + 16;
	expect(sizes).toEqual([128, 128, 128, 128, 256, 384].map((size) => size + around));
});

test("a message with any bit changed, of another car, or sealed with another key is damaged", async () => {
	const sealer = await sealerOf(key, token);
	const sealed = await sealer.seal(bytes("half a tank"));
	for (let i = 1; i < sealed.length; i++) {
		const changed = Uint8Array.from(sealed);
		changed[i] ^= 1 << (i % 8);
		expect(await sealer.open(changed), `byte ${i}`).toEqual({ ok: false, error: "damaged" });
	}
	for (const length of [0, 1, 13, 20, sealed.length - 1])
		expect(await sealer.open(sealed.subarray(0, length))).toEqual({ ok: false, error: "damaged" });
	const others = [await sealerOf(newKey(), token), await sealerOf(key, "BBBBBBBBBBBBBBBBBBBBBB")];
	for (const other of others) expect(await other.open(sealed)).toEqual({ ok: false, error: "damaged" });
});

test("a message of a later format is newer, whatever else it is", async () => {
	const sealer = await sealerOf(key, token);
	expect(await sealer.open(Uint8Array.from([2, 0, 0]))).toEqual({ ok: false, error: "newer" });
	expect(await sealer.open(Uint8Array.from([0, ...new Uint8Array(200)]))).toEqual({ ok: false, error: "damaged" });
});

test("the id of a message is the same for the same name, and another with another key", async () => {
	const [one, two] = [await sealerOf(key, token), await sealerOf(newKey(), token)];
	expect(await one.messageId("fill")).toBe(await (await sealerOf(key, token)).messageId("fill"));
	expect(await one.messageId("fill")).not.toBe(await one.messageId("fil"));
	expect(await one.messageId("fill")).not.toBe(await two.messageId("fill"));
	expect(await one.messageId("fill")).toMatch(/^[\w-]{22}$/);
});
