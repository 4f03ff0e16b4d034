/**
 * Why the device could not keep or give the data: codes and facts. From the worker to the page an error keeps its name and
 * its message alone, so the message holds the facts as JSON; `faultOf` reads them, and the app puts them in words.
 */
import type { LogError } from "./logError";

export type Loss = "lost" | "slow" | "unwritten" | "full" | "blocked" | "newer" | "refused" | "closed";

export interface Duplicate {
	readonly of: "event" | "calibration";
	readonly id: string;
	/** It is about to be saved once more: an earlier try may have gone through. */
	readonly again: boolean;
}

export interface TooMany {
	readonly of: "events" | "calibrations";
	readonly count: number;
	readonly most: number;
}

export type Fault =
	| { readonly kind: "lost"; readonly facts: Loss }
	| { readonly kind: "duplicate"; readonly facts: Duplicate }
	| { readonly kind: "tooMany"; readonly facts: TooMany }
	| { readonly kind: "refused"; readonly facts: LogError };

const names: Readonly<Record<string, Fault["kind"]>> = {
	StorageLostError: "lost",
	DuplicateIdError: "duplicate",
	TooManyError: "tooMany",
	RefusedError: "refused",
};

/** What a thrown thing says, here or from the worker; null: it is none of ours. */
export function faultOf(error: unknown): Fault | null {
	if (!(error instanceof Error) || !Object.hasOwn(names, error.name)) return null;
	return { kind: names[error.name], facts: JSON.parse(error.message) } as Fault;
}

/** The storage can't be used. What was acknowledged before is not affected. */
export class StorageLostError extends Error {
	override readonly name = "StorageLostError";

	constructor(
		readonly reason: Loss,
		cause?: unknown,
	) {
		super(JSON.stringify(reason), { cause });
	}
}

/** An id that is taken by something with other contents. Nothing was written. */
export class DuplicateIdError extends Error {
	override readonly name = "DuplicateIdError";

	constructor(
		readonly of: Duplicate["of"],
		readonly id: string,
		again = false,
	) {
		super(JSON.stringify({ of, id, again } satisfies Duplicate));
	}
}

/** Two logs that are each within the limits, and together not. Nothing was written. */
export class TooManyError extends RangeError {
	override readonly name = "TooManyError";

	constructor(facts: TooMany) {
		super(JSON.stringify(facts));
	}
}

/** What is no car or event by the log format, or names what is not there. */
export class RefusedError extends RangeError {
	override readonly name = "RefusedError";

	constructor(facts: LogError) {
		super(JSON.stringify(facts));
	}
}
