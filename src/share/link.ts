/**
 * Links: `https://host/folder/#/card/PAYLOAD`. The payload stands behind the #, which browsers keep to themselves, so no
 * server sees it. Of a link that was received only what follows the # counts: two phones may have the app from two hosts.
 */
import { framed, type Kind } from "./frame";

/** `app` is the address of the app, without a fragment. */
export function linkTo(app: string, kind: Kind, body: Uint8Array): string {
	return `${app}#/${kind}/${framed(kind, body)}`;
}

export interface Found {
	readonly kind: Kind;
	readonly payload: string;
}

/** All that is ours in a text, in order: of a QR code, a message, a file. */
export function foundIn(text: string): Found[] {
	return [...text.matchAll(/#\/(card|take|hand|live)\/([\w-]+)/g)].map(([, kind, payload]) => ({
		kind: kind as Kind,
		payload,
	}));
}
