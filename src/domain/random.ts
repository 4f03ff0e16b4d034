/**
 * Chance for the estimator, seeded from the log itself: an event's draws hang on its id alone, so that the same log
 * gives the same numbers everywhere, and an event added later moves nothing that was shown before.
 */

/** A stream of 32-bit whole numbers. */
export type Seeds = () => number;

/** The stream that belongs to a text (FNV-1a into the mixer of MurmurHash3). */
export function seedsFor(text: string): Seeds {
	let state = 0x811c9dc5;
	for (let i = 0; i < text.length; i++) state = Math.imul(state ^ text.charCodeAt(i), 0x01000193);
	return () => {
		state = (state + 0x9e3779b9) | 0;
		let h = Math.imul(state ^ (state >>> 16), 0x85ebca6b);
		h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
		return (h ^ (h >>> 16)) >>> 0;
	};
}

/** The next number of the stream as a uniform in 0 … 1, ends excluded. */
export function uniform(seeds: Seeds): number {
	return (seeds() + 0.5) / 4294967296;
}
