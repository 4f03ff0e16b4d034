/** How long people are let wait for a storage that may never answer. */
import { StorageLostError } from "./errors";

/** For opening, and for one write. */
export const soonMs = 3_000;
/** For reading a log, and for writing a whole one. */
export const longMs = 60_000;

/** What was owed when the thread itself was busy comes in first, and is no failure. */
const graceMs = 200;

/** The result, or a StorageLostError once the time is up. The work may still succeed later. */
export function within<T>(work: Promise<T>, ms: number, onGivenUp: () => void = () => {}): Promise<T> {
	return new Promise((resolve, reject) => {
		let timer = setTimeout(() => {
			timer = setTimeout(() => {
				onGivenUp();
				reject(new StorageLostError("slow"));
			}, graceMs);
		}, ms - graceMs);
		work.finally(() => clearTimeout(timer)).then(resolve, reject);
	});
}
