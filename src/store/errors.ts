/** Why the device could not keep or give the data. */

const sentences = {
	lost: "The browser has lost hold of this app's storage: reload the app, and if that does not help restart the device.",
	slow: "The storage of this device does not answer: wait a moment and try again; if that does not help, reload the app.",
	unwritten:
		"This device could not write, so nothing was saved; its storage may be full: free some space and try again.",
	full: "This device has no room left, so nothing was saved: free some space and try again.",
	blocked: "Another tab holds an older version of this app: close the other tabs, then reload.",
	newer: "The data on this device is from a newer version of the app: reload to update the app.",
	refused: "This browser does not let the app keep data: leave private browsing, or allow this site to store data.",
	closed: "The storage was closed: reload the app.",
};

/** The storage can't be used; the message is fit to be shown. What was acknowledged before is not affected. */
export class StorageLostError extends Error {
	override readonly name = "StorageLostError";

	constructor(
		readonly reason: keyof typeof sentences,
		cause?: unknown,
	) {
		super(sentences[reason], { cause });
	}
}

/** An id that is taken by something with other contents. Nothing was written. */
export class DuplicateIdError extends Error {
	override readonly name = "DuplicateIdError";

	constructor(
		readonly of: "event" | "calibration",
		readonly id: string,
		advice = "",
	) {
		super(
			`The ${of} ${JSON.stringify(id)} is here already with other contents, so nothing was saved.${advice && ` ${advice}`}`,
		);
	}
}
