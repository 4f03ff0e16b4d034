/** Looks for damage once the account is on the screen, and lets the page remember what every log must come to. */
import { type Witness, witnessIn } from "../store/witness";
import type { KeeperPort } from "./keeperPort";
import type { Model } from "./model";

/** Resolves after the first look. `storage`: the page's own small store. */
export async function watchOver(
	model: Pick<Model, "state" | "damaged">,
	keeper: Pick<KeeperPort, "check" | "heads" | "subscribe">,
	storage: () => Storage,
	report: (error: unknown) => void,
): Promise<void> {
	const witness: Witness = witnessIn(storage);
	let looked = false;
	let waiting = false;
	let queue: Promise<void> = Promise.resolve();

	/** Nothing is noted while something is missing: it would be forgotten. */
	async function follow(): Promise<void> {
		waiting = false;
		if (!looked || model.state().damage) {
			model.damaged(await keeper.check(witness.recall()));
			looked = true;
		}
		if (!model.state().damage) witness.note(await keeper.heads());
	}
	function soon(): Promise<void> {
		// Several changes at once are followed once.
		if (!waiting) queue = queue.then(follow).catch(report);
		waiting = true;
		return queue;
	}
	await keeper.subscribe(() => void soon());
	await soon();
}
