/**
 * Points of an account on the disk, the denser the newer: the last multiple of eight events, of sixteen, of thirty-two … .
 * Taking back an entry of n events ago then costs a replay of about n events, and ten years fit in ten points.
 */
import { smallSample } from "../domain/estimator/sampleSize";
import type { Store } from "../store/store";
import { agrees, type Checkpoint, type Prepared } from "./accounts";

const every = 8;

/** What is known of the stored points without reading them: they weigh megabytes. */
type Index = Readonly<Record<number, { readonly position: number; readonly fingerprint: number }>>;

const indexKey = (carId: string) => `${carId}/points`;
const pointKey = (carId: string, slot: number) => `${carId}/point/${slot}`;

/** The slot of a position: how often its number of eights can be halved; null where none is due. */
function slotOf(position: number): number | null {
	const eights = position / every;
	if (!Number.isInteger(eights) || eights === 0) return null;
	return 31 - Math.clz32(eights & -eights);
}

/** The latest stored point that agrees with the log. */
export async function storedPoint(store: Store, log: Prepared): Promise<Checkpoint[]> {
	const index = ((await store.checkpoint(indexKey(log.car.id))) ?? {}) as Index;
	const usable = Object.entries(index).filter(([, point]) => agrees(log, point));
	usable.sort(([, a], [, b]) => b.position - a.position);
	for (const [slot] of usable) {
		// A power cut may have taken the point, or have left the index newer than it, or the other way round.
		const point = (await store.checkpoint(pointKey(log.car.id, Number(slot)))) as Checkpoint | undefined;
		if (point && agrees(log, point.account)) return [point];
	}
	return [];
}

/** Stores a point if it is due and no later one of this log will take its slot. Large samples are quicker made anew. */
export async function storePoint(store: Store, log: Prepared, point: Checkpoint): Promise<void> {
	const { position, fingerprint, belief } = point.account;
	const slot = slotOf(position);
	if (slot === null || belief.weight.length > smallSample) return;
	if (position + every * 2 ** (slot + 1) <= log.counting.length) return;
	const index = ((await store.checkpoint(indexKey(log.car.id))) ?? {}) as Index;
	await store.saveCheckpoint(pointKey(log.car.id, slot), point);
	await store.saveCheckpoint(indexKey(log.car.id), { ...index, [slot]: { position, fingerprint } });
}
