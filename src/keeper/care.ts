/** Looking for damage, and mending it. Loaded once the account is on the screen. */
import type { Copying } from "../store/copying";
import { type CarDamage, type Finding, findingsIn } from "../store/damage";
import type { Heads } from "../store/head";
import { newsFor } from "../store/journal";
import type { CarRepair } from "../store/repair";
import type { Rescue } from "../store/rescue";
import type { Holdings } from "../store/snapshot";
import type { Store } from "../store/store";

export interface Damage {
	readonly cars: readonly CarDamage[];
	/** Whether this browser keeps a second copy, and it could be read. */
	readonly copied: boolean;
}

interface Looked {
	readonly findings: readonly Finding[];
	readonly rescue: Rescue | null;
	readonly copy: Holdings | null;
}

/** What is missing; null: nothing, and the copy is as new as the database. Throws StorageLostError. */
export async function checked(store: Store, copying: Copying, remembered: Heads): Promise<Damage | null> {
	const { findings, rescue, copy } = await look(store, copying, remembered);
	const damaged = findings.flatMap(({ damage }) => (damage ? [damage] : []));
	const heads = findings.flatMap(({ damage, repair }) => (damage || !repair ? [] : [repair]));
	if (heads.length > 0) await store.repair({ cars: heads, preferences: new Map() });
	// What was chosen on an emptied device must not stand in for what was chosen before.
	copying.spare(damaged.length > 0);
	if (rescue && copy) await bringUpToDate(store, rescue, copy, damaged);
	return damaged.length > 0 ? { cars: damaged, copied: copy !== null } : null;
}

/**
 * Brings back all that the copy has, and lets the heads stand for what is there then. Gives what was found; null: nothing
 * was missing any more. Throws StorageLostError, and nothing is changed.
 */
export async function broughtBack(store: Store, copying: Copying, remembered: Heads): Promise<Damage | null> {
	const { findings, rescue, copy } = await look(store, copying, remembered);
	const damaged = findings.flatMap(({ damage }) => (damage ? [damage] : []));
	if (damaged.length === 0) return null;
	const cars = findings.flatMap(({ repair }): CarRepair[] => (repair ? [repair] : []));
	await store.repair({ cars, preferences: copy?.preferences ?? new Map() });
	copying.spare(false);
	if (rescue && copy) await bringUpToDate(store, rescue, copy, []);
	return { cars: damaged, copied: copy !== null };
}

/** The copy is read before the database, which may only be newer. */
async function look(store: Store, copying: Copying, remembered: Heads): Promise<Looked> {
	await copying.settle();
	const rescue = await copying.here();
	const copy = rescue ? await rescue.read().catch(() => null) : null;
	return { findings: findingsIn(await store.snapshot(), copy, remembered), rescue, copy };
}

async function bringUpToDate(
	store: Store,
	rescue: Rescue,
	copy: Holdings,
	damaged: readonly CarDamage[],
): Promise<void> {
	const here = await store.snapshot();
	const cars = new Map([...here.cars].filter(([id]) => !damaged.some(({ carId }) => carId === id)));
	const preferences = damaged.length > 0 ? new Map<string, unknown>() : here.preferences;
	const news = newsFor(copy, { cars, preferences });
	// A full disk must not stop anything; it is tried again at the next start.
	if (news.length > 0) await rescue.write(news).catch(() => {});
}
