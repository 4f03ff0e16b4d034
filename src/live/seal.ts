/**
 * What leaves the phone is sealed: AES-256-GCM with a random nonce of 96 bits, the car's token and the format's version as
 * additional data, the size rounded up to whole blocks. Whoever keeps the messages learns when, and roughly how long.
 */
import { err, ok, type Result } from "../domain/result";
import { MangledError, reader, writer } from "../share/bytes";
import { base64url } from "../share/frame";
import { keyLength } from "../share/liveCode";

/** `damaged`: changed on its way, sealed with another key, or of another car; `newer`: of a later version of the app. */
export type Unsealable = "damaged" | "newer";

export interface Sealer {
	seal(contents: Uint8Array): Promise<Uint8Array>;
	open(sealed: Uint8Array): Promise<Result<Uint8Array, Unsealable>>;
	/** The same for the same name, and telling nothing of it to who lacks the key. */
	messageId(name: string): Promise<string>;
}

const formatVersion = 1;
const nonceLength = 12;
/** Entries are 40 to 160 bytes: most come to one or two blocks. */
const block = 128;
const messageIdLength = 16;

export function newKey(): Uint8Array {
	return crypto.getRandomValues(new Uint8Array(keyLength));
}

export async function sealerOf(key: Uint8Array, token: string): Promise<Sealer> {
	const [sealing, naming] = await Promise.all([derived(key, "seal"), derived(key, "name")]);
	const additionalData = bytesOf(`heeltap live ${formatVersion} ${token}`);
	return {
		async seal(contents) {
			const iv = crypto.getRandomValues(new Uint8Array(nonceLength));
			const sealed = await crypto.subtle.encrypt({ name: "AES-GCM", iv, additionalData }, sealing, padded(contents));
			return Uint8Array.from([formatVersion, ...iv, ...new Uint8Array(sealed)]);
		},
		async open(bytes) {
			if (bytes.length > 0 && bytes[0] > formatVersion) return err("newer");
			if (bytes.length <= 1 + nonceLength || bytes[0] !== formatVersion) return err("damaged");
			const iv = Uint8Array.from(bytes.subarray(1, 1 + nonceLength));
			const sealed = Uint8Array.from(bytes.subarray(1 + nonceLength));
			try {
				return ok(unpadded(await crypto.subtle.decrypt({ name: "AES-GCM", iv, additionalData }, sealing, sealed)));
			} catch (error) {
				if (error instanceof MangledError || (error as Error | null)?.name === "OperationError") return err("damaged");
				throw error;
			}
		},
		async messageId(name) {
			const whole = new Uint8Array(await crypto.subtle.sign("HMAC", naming, bytesOf(name)));
			return base64url(whole.subarray(0, messageIdLength));
		},
	};
}

/** A key for one purpose each (HKDF, RFC 5869). */
async function derived(key: Uint8Array, what: "seal" | "name"): Promise<CryptoKey> {
	const base = await crypto.subtle.importKey("raw", Uint8Array.from(key), "HKDF", false, ["deriveKey"]);
	const how = { name: "HKDF", hash: "SHA-256", salt: new Uint8Array(), info: bytesOf(`heeltap live ${what}`) };
	return what === "seal"
		? crypto.subtle.deriveKey(how, base, { name: "AES-GCM", length: 256 }, false, ["encrypt", "decrypt"])
		: crypto.subtle.deriveKey(how, base, { name: "HMAC", hash: "SHA-256", length: 256 }, false, ["sign"]);
}

function bytesOf(text: string): Uint8Array<ArrayBuffer> {
	return new TextEncoder().encode(text);
}

function padded(contents: Uint8Array): Uint8Array<ArrayBuffer> {
	const told = writer().count(contents.length).all(contents).bytes;
	const bytes = new Uint8Array(Math.ceil(told.length / block) * block);
	bytes.set(told);
	return bytes;
}

/** Throws a MangledError. */
function unpadded(bytes: ArrayBuffer): Uint8Array {
	const from = reader(new Uint8Array(bytes));
	return Uint8Array.from(from.take(from.count()));
}
