/**
 * Chromium keeps a database as a file of writes to which each start adds. A power cut leaves zeros at its end, and what
 * is written behind them is skipped by a later start, or taken for damage and wiped with all the rest. Deleting any
 * database of the app makes Chromium move everything into a finished file and begin another one for what comes next.
 */
import { deleteDB, openDB } from "idb";
import { within } from "./patience";

/** A browser that can't do it in this time is not waited for. */
const atMostMs = 1_000;

/** Resolves once nothing will be written behind what an earlier power cut has left, or that can't be had. */
export async function beginFreshFile(name: string): Promise<void> {
	// Only Chromium has this, and only Chromium needs it.
	if (!("userAgentData" in (globalThis.navigator ?? {}))) return;
	const spare = `${name}-spare`;
	const made = openDB(spare).then((db) => {
		db.close();
		return deleteDB(spare);
	});
	await within(made, atMostMs).catch(() => {});
}
