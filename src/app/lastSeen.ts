/**
 * The tank as last seen, where the page can read it at once: the first picture does not wait for worker and database. It is
 * thrown away before anything is written, so what is shown from it was never overtaken; the log then confirms it.
 */
import type { Car } from "../domain/vehicle";
import type { TankNow } from "../keeper/view";
import { version } from "../pwa/version";
import type { Settings } from "./settings";

export interface Seen {
	readonly car: Car;
	readonly settings: Settings;
	readonly now: TankNow;
}

export interface LastSeen {
	recall(): Seen | null;
	note(seen: Seen): void;
	forget(): void;
}

export const nothingSeen: LastSeen = { recall: () => null, note: () => {}, forget: () => {} };

/** Kept in the browser's small synchronous store; where it is barred or full, the app starts without. */
export function seenOnThisDevice(storage: () => Storage): LastSeen {
	const key = "heeltap-seen";
	const attempt = <T>(work: () => T): T | null => {
		try {
			return work();
		} catch {
			return null;
		}
	};
	return {
		recall: () =>
			attempt(() => {
				const seen = JSON.parse(storage().getItem(key) ?? "null");
				// Another version may have meant other things.
				return seen?.version === version ? (seen as Seen) : null;
			}),
		note: (seen) => void attempt(() => storage().setItem(key, JSON.stringify({ version, ...seen }))),
		forget: () => void attempt(() => storage().removeItem(key)),
	};
}
