/** Why the device could not keep or give the data, and how to mend it. */
import type { Loss } from "../../../store/errors";

export const words = {
	losses: {
		lost: "The browser has lost hold of this app's storage: reload the app, and if that does not help restart the device.",
		slow: "The storage of this device does not answer: wait a moment and try again; if that does not help, reload the app.",
		unwritten:
			"This device could not write, so nothing was saved; its storage may be full: free some space and try again.",
		full: "This device has no room left, so nothing was saved: free some space and try again.",
		blocked: "Another tab holds an older version of this app: close the other tabs, then reload.",
		newer: "The data on this device is from a newer version of the app: reload to update the app.",
		refused: "This browser does not let the app keep data: leave private browsing, or allow this site to store data.",
		closed: "The storage was closed: reload the app.",
	} satisfies Record<Loss, string>,
	/** Of an error that no driver should meet: its own words. */
	unforeseen: (message: string) => message,
	reload: "Reload the app",
	/** What the worker has to tell by itself. */
	stale: "Another tab runs a newer version of this app: reload this one before you go on.",
	wiped: "The browser found this app’s data damaged and began anew.",
};

export type Words = typeof words;
