/** Invitations: each opens one car on the server, whose name and number nobody but its phones know. */
import { createUser } from "@nats-io/nkeys";
import { alphabet, claimsText } from "../../live/credentials";
import { base64url } from "../../share/frame";
import { linkTo } from "../../share/link";
import { type Access, packedInvitation } from "../../share/liveCode";
import type { Choices } from "./config";
import type { HostKeys } from "./keys";

export interface Invitation {
	readonly access: Access;
	/** What the host needs to take it back. */
	readonly user: string;
	readonly link: string;
}

/** `ends`: seconds since 1970. `app`: where the app is, without a fragment. */
export function invitationFor(
	choices: Choices,
	keys: HostKeys,
	{ app, now, ends = null }: { readonly app: string; readonly now: number; readonly ends?: number | null },
): Invitation {
	const user = createUser();
	const claims = {
		token: base64url(crypto.getRandomValues(new Uint8Array(16))),
		account: rawKey(keys.cars.getPublicKey()),
		signer: rawKey(keys.signer.getPublicKey()),
		issued: Math.floor(now / 1000),
		ends,
		user: user.getPublicKey(),
	};
	const signature = keys.signer.sign(new TextEncoder().encode(claimsText(claims)));
	const seed = rawSeed(new TextDecoder().decode(user.getSeed()));
	const { user: _, ...rest } = claims;
	const access: Access = { ...rest, server: choices.url, seed, signature };
	return { access, user: claims.user, link: linkTo(app, "live", packedInvitation(access)) };
}

/** The 32 bytes inside an NKey; a public one has one byte before them, a seed two. */
function rawKey(nkey: string): Uint8Array {
	return bytesInBase32(nkey).slice(1, 33);
}

function rawSeed(nkey: string): Uint8Array {
	return bytesInBase32(nkey).slice(2, 34);
}

function bytesInBase32(text: string): Uint8Array {
	const bits = [...text].map((letter) => alphabet.indexOf(letter).toString(2).padStart(5, "0")).join("");
	const bytes = bits.match(/.{8}/g) ?? [];
	return Uint8Array.from(bytes, (byte) => Number.parseInt(byte, 2));
}
