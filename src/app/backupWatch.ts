/** Follows the log with its backups: after the start, after every save, and when the driver comes back to the app. */
import { isoWithOffset } from "./app";
import { keepFile } from "./automaticBackup";
import { lookAtBackups } from "./backupState";
import type { KeeperPort } from "./keeperPort";
import type { Model } from "./model";

/** Resolves after the first look. */
export async function watchBackups(
	model: Pick<Model, "state" | "subscribe" | "backedUp">,
	keeper: Pick<KeeperPort, "cars" | "draft" | "saveDraft" | "exportLog" | "subscribe">,
	now: () => number,
	report: (error: unknown) => void,
): Promise<void> {
	let seen = "";
	let waiting = false;
	let queue: Promise<void> = Promise.resolve();

	async function look(): Promise<void> {
		waiting = false;
		await lookAtBackups(model, keeper, now());
	}
	function soon(): Promise<void> {
		// Several changes at once are followed once.
		if (!waiting) queue = queue.then(look).catch(report);
		waiting = true;
		return queue;
	}
	/** Cars that are not on the screen have files, too. */
	function keepOther(carId: string): void {
		if (carId !== model.state().car?.id && !model.state().damage)
			queue = queue.then(async () => void (await keepFile(keeper, carId, isoWithOffset(now())))).catch(report);
	}

	model.subscribe(() => {
		const { account, damage } = model.state();
		const key = JSON.stringify([account?.car, account?.count, damage === null]);
		if (key === seen) return;
		seen = key;
		void soon();
	});
	document.addEventListener("visibilitychange", () => {
		if (document.visibilityState === "visible") void soon();
	});
	await keeper.subscribe((carId) => {
		if (carId !== null) keepOther(carId);
	});
	for (const { id } of await keeper.cars()) keepOther(id);
	await soon();
}
