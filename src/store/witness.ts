/** The page's own memory of what every log must come to, where the database can't take it along when it goes. */
import type { Head, Heads } from "./head";

export interface Witness {
	recall(): Heads;
	note(heads: Heads): void;
}

const key = "heeltap-heads";

/** In the browser's small synchronous store; where it is barred or full, nothing is remembered. */
export function witnessIn(storage: () => Storage): Witness {
	return {
		recall() {
			try {
				const heads: unknown = JSON.parse(storage().getItem(key) ?? "{}");
				const entries = typeof heads === "object" && heads !== null ? Object.entries(heads) : [];
				return Object.fromEntries(entries.filter(([, head]) => isHead(head)));
			} catch {
				return {};
			}
		},
		note(heads) {
			try {
				storage().setItem(key, JSON.stringify(heads));
			} catch {
				// Full or barred: the other copy has to do.
			}
		},
	};
}

function isHead(value: unknown): value is Head {
	const { rev, count, sum, car } = (value ?? {}) as Partial<Head>;
	return [rev, count, sum].every(Number.isFinite) && (car === null || Number.isFinite(car));
}
