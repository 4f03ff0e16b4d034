/** Saves the log as a file, or hands it to another app, and remembers that it has left. */
import type { Car } from "../domain/vehicle";
import { isoWithOffset, useApp } from "./app";
import { backupName, download, share } from "./backupFile";
import { entriesIn, noteBackup } from "./backupNotes";
import { lookAtBackups } from "./backupState";
import { backupWords } from "./words/backup";

export function useBackup(car: Car): (sharing: boolean) => Promise<void> {
	const { model, toasts, now } = useApp();
	return async (sharing) => {
		const text = await model.exportLog(car.id);
		if (text === null) return;
		const at = isoWithOffset(now());
		const name = backupName(car.name, at.slice(0, 10));
		const sent = sharing ? await share(text, name) : "refused";
		if (sent === "stopped") return;
		if (sent === "refused") {
			download(text, name);
			const { notSent, savedAs } = backupWords();
			toasts.show((sharing ? notSent : savedAs)(`${name}.json`));
		}
		await noteBackup(model, car.id, { at, entries: entriesIn(text), how: sent === "sent" ? "sent" : "saved" });
		await lookAtBackups(model, model, now());
	};
}
