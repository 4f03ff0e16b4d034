/**
 * What lets a phone replicate a car through a server: the host's **invitation**, and the **pairing** code that the first phone
 * shows the next one, which holds the key besides. Keys are bytes and not texts, so that either fits one QR code.
 */
import { err, ok, type Result } from "../domain/result";
import { MangledError, type Reader, reader, type Writer, writer } from "./bytes";
import { base64url, bytesIn, readable, type Unreadable, unframed } from "./frame";

/** What a car's phones show to the server. It opens this car's subject, and nothing else. */
export interface Access {
	/** `wss://host/path` */
	readonly server: string;
	/** What the server knows the car by: 16 bytes of chance as base64url. */
	readonly token: string;
	/** Public keys of the account and of what signed this, 32 bytes each. */
	readonly account: Uint8Array;
	readonly signer: Uint8Array;
	/** Private: 32 bytes, from which the user's key pair is made. */
	readonly seed: Uint8Array;
	/** Seconds since 1970. */
	readonly issued: number;
	/** Seconds since 1970; null: until the host takes it back. */
	readonly ends: number | null;
	/** Of the user's claims as `credentials.ts` writes them: 64 bytes. */
	readonly signature: Uint8Array;
}

export interface Pairing {
	readonly access: Access;
	/** 32 bytes: what the car's entries are sealed with. */
	readonly key: Uint8Array;
	readonly carId: string;
	readonly carName: string;
	/** When it stops being taken, seconds since 1970: a picture of it that turns up later is of no use in the app. */
	readonly until: number;
}

export type LiveCode =
	| { readonly what: "invitation"; readonly access: Access }
	| { readonly what: "pairing"; readonly pairing: Pairing };

const invitation = 0;
const pairing = 1;
export const keyLength = 32;
const tokenLength = 16;
const signatureLength = 64;
const longestServer = 200;
const longestText = 800;

export function packedInvitation(access: Access): Uint8Array {
	return Uint8Array.from(writeAccess(writer().byte(invitation), access).bytes);
}

export function packedPairing({ access, key, carId, carName, until }: Pairing): Uint8Array {
	const out = writeAccess(writer().byte(pairing), access).all(key).count(until);
	return Uint8Array.from(writeText(writeText(out, carId), carName).bytes);
}

export function readLiveCode(payload: string): Result<LiveCode, Unreadable> {
	return readable<LiveCode>(() => {
		const body = unframed("live", payload);
		if (!body.ok) return body;
		const from = reader(body.value);
		const what = from.byte();
		// A kind of code that came later.
		if (what > pairing) return err("newer");
		const access = readAccess(from);
		if (what === invitation) return from.left > 0 ? err("mangled") : ok({ what: "invitation", access });
		const key = Uint8Array.from(from.take(keyLength));
		const until = from.count();
		const [carId, carName] = [readText(from, longestText), readText(from, longestText)];
		return from.left > 0 || carId === ""
			? err("mangled")
			: ok({ what: "pairing", pairing: { access, key, carId, carName, until } });
	});
}

function writeAccess(out: Writer, { server, token, ...rest }: Access): Writer {
	writeText(out, server)
		.all(bytesIn(token) ?? [])
		.all(rest.account)
		.all(rest.signer)
		.all(rest.seed);
	return out
		.count(rest.issued)
		.count(rest.ends ?? 0)
		.all(rest.signature);
}

function readAccess(from: Reader): Access {
	const server = readText(from, longestServer);
	if (!isServer(server)) throw new MangledError("this is no address of a server");
	const bytes = (length: number) => Uint8Array.from(from.take(length));
	const token = base64url(bytes(tokenLength));
	const [account, signer, seed] = [bytes(keyLength), bytes(keyLength), bytes(keyLength)];
	const issued = from.count();
	const ends = from.count();
	return {
		server,
		token,
		account,
		signer,
		seed,
		issued,
		ends: ends === 0 ? null : ends,
		signature: bytes(signatureLength),
	};
}

/** An address that a phone may be sent to: without a user, a query or a fragment that would hold something else. */
export function isServer(text: string): boolean {
	if (text.length > longestServer || !/^wss?:\/\/[\w.[\]:-]+(\/[\w.~/-]*)?$/.test(text)) return false;
	return URL.canParse(text);
}

function writeText(out: Writer, text: string): Writer {
	const bytes = new TextEncoder().encode(text);
	return out.count(bytes.length).all(bytes);
}

function readText(from: Reader, longest: number): string {
	const length = from.count();
	if (length > longest) throw new MangledError("a text is too long");
	try {
		return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(from.take(length));
	} catch (error) {
		throw error instanceof MangledError ? error : new MangledError("a text is not UTF-8");
	}
}
