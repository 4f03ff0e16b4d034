/**
 * What a phone shows to the server: a NATS user JWT, written here the same way by the host, who signs it, and by the phone,
 * which keeps only its parts. The rights stand in the account (a scoped signing key), not in it.
 */
import type { Access } from "../share/liveCode";

/** First letters of NKeys, as their first byte makes them in base32. */
const prefix = { account: 0, user: 20 << 3, seed: 18 << 3 };

export interface Claims extends Pick<Access, "token" | "account" | "signer" | "issued" | "ends"> {
	/** The user's public NKey. */
	readonly user: string;
}

/** The text that the host signs. */
export function claimsText({ token, account, signer, issued, ends, user }: Claims): string {
	const claims = {
		iat: issued,
		iss: publicNKey("account", signer),
		name: token,
		sub: user,
		...(ends !== null && { exp: ends }),
		nats: { issuer_account: publicNKey("account", account), type: "user", version: 2 },
	};
	return [{ typ: "JWT", alg: "ed25519-nkey" }, claims].map((part) => base64urlOfText(JSON.stringify(part))).join(".");
}

export function publicNKey(of: "account" | "user", key: Uint8Array): string {
	return inBase32([prefix[of], ...key]);
}

/** A user's private NKey, as `fromSeed` takes it. */
export function userSeed(seed: Uint8Array): Uint8Array {
	const first = prefix.seed | (prefix.user >> 5);
	return new TextEncoder().encode(inBase32([first, (prefix.user & 31) << 3, ...seed]));
}

function base64urlOfText(text: string): string {
	return btoa(text).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** RFC 4648 without padding, the checksum that NKeys carry behind it, low byte first. */
function inBase32(body: readonly number[]): string {
	const sum = crc16(body);
	const bytes = [...body, sum & 0xff, sum >> 8];
	const bits = bytes.map((byte) => byte.toString(2).padStart(8, "0")).join("");
	const groups = bits.match(/.{1,5}/g) ?? [];
	return groups.map((group) => alphabet[Number.parseInt(group.padEnd(5, "0"), 2)]).join("");
}

/** RFC 4648, in which NKeys are written. */
export const alphabet = "ABCDEFGHIJKLMNOPQRSTUVWXYZ234567";

/** CRC-16/XMODEM. */
function crc16(bytes: readonly number[]): number {
	let sum = 0;
	for (const byte of bytes) {
		sum ^= byte << 8;
		for (let bit = 0; bit < 8; bit++) sum = ((sum << 1) ^ (sum & 0x8000 ? 0x1021 : 0)) & 0xffff;
	}
	return sum;
}
