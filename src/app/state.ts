/** What the screens show. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import type { Damage } from "../keeper/care";
import type { AccountView, TankNow } from "../keeper/view";
import type { BackupState } from "./backupState";
import type { Failure } from "./failure";
import type { Fleet } from "./fleet";
import type { Settings } from "./settings";

export interface State {
	/** `failed`: the store could not be read at all. */
	readonly phase: "opening" | "ready" | "failed";
	readonly cars: readonly Car[];
	readonly settings: Settings;
	/** The active car; null before the first is set up. */
	readonly car: Car | null;
	/** The tank, perhaps from before the log was read. */
	readonly now: TankNow | null;
	/** All events of the car, in order; null until they are read. */
	readonly events: readonly LogEvent[] | null;
	/** Null until the log is reckoned. */
	readonly account: AccountView | null;
	/** Share of a long replay that is done; null when none runs. */
	readonly working: number | null;
	/** Why the store can't be used. */
	readonly failure: Failure | null;
	/** What was found missing on this device. */
	readonly damage: Damage | null;
	/** How a car stands with its backups; null until looked at. */
	readonly backup: BackupState | null;
	/** All cars at a glance; null until looked at. */
	readonly fleet: Fleet | null;
}
