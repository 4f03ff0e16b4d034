/** What a car's log must come to. Kept beside it in the same transaction, and elsewhere, so that what goes missing is noticed. */

export interface Head {
	/** Rises with every write about this car. */
	readonly rev: number;
	/** Id of the event that this device wrote last; absent before its first. */
	readonly last?: string;
	readonly count: number;
	/** Sum of the events' digests, whatever their order. */
	readonly sum: number;
	/** Digest of the car; null: it was removed; `lostCar`: nobody could bring it back, and its entries wait for it. */
	readonly car: number | null;
	/** The revision at which the car was removed, if it ever was. */
	readonly since?: number;
	/** Ids that events name as written before them and that never were here: a file that lacked them was opened. */
	readonly lacks?: readonly string[];
}

/** Heads by car, as the page remembers them, with the cars' names. */
export type Heads = Readonly<Record<string, Head & { readonly name?: string }>>;

export const lostCar = 0;

/** Two numbers below this add up exactly. */
const modulus = 2 ** 52;

/** 52-bit hash of a text (two 32-bit FNV-1a lanes). */
export function digestOfText(text: string): number {
	let a = 0x811c9dc5;
	let b = 0x1b873593;
	for (let i = 0; i < text.length; i++) {
		const code = text.charCodeAt(i);
		a = Math.imul(a ^ code, 0x01000193);
		b = Math.imul(b ^ code, 0x85ebca6b);
		b ^= b >>> 13;
	}
	return (b >>> 12) * 4294967296 + (a >>> 0);
}

/** The same for the same contents, whatever the order of their names; an event's link to the one before does not count. */
export function digestOf(value: unknown): number {
	const linkless = isNamed(value) ? { ...value, after: undefined } : value;
	return digestOfText(textInOrder(linkless));
}

/** JSON with its names in order; nothing for nothing. */
export function textInOrder(value: unknown): string {
	return JSON.stringify(value, inOrder) ?? "";
}

function inOrder(_name: string, value: unknown): unknown {
	return isNamed(value) ? Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))) : value;
}

function isNamed(value: unknown): value is Record<string, unknown> {
	return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The figures with more events in them. */
export function withEvents(
	before: Pick<Head, "count" | "sum">,
	events: Iterable<unknown>,
): Pick<Head, "count" | "sum"> {
	let { count, sum } = before;
	for (const event of events) {
		count++;
		sum = (sum + digestOf(event)) % modulus;
	}
	return { count, sum };
}

export const noEvents = { count: 0, sum: 0 };
