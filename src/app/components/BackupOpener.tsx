import { useState } from "preact/hooks";
import type { Merged } from "../../store/store";
import { isoWithOffset, useApp } from "../app";
import { noteOpened } from "../backupNotes";
import { lookAtBackups } from "../backupState";
import { readLogFile } from "../readLogFile";
import { logErrorWords } from "../refusal";
import { settingName } from "../settingName";
import { openerWords } from "../words/opener";
import { FileOpener } from "./FileOpener";

interface BackupOpenerProps {
	readonly label: string;
	readonly onOpened?: () => void;
}

/** Takes in a log file: a backup, or the log from another phone. */
export function BackupOpener({ label, onOpened }: BackupOpenerProps) {
	const { model, toasts, now } = useApp();
	const [fault, setFault] = useState<string | null>(null);
	async function open([file]: readonly File[]): Promise<void> {
		setFault(null);
		const text = await readLogFile(file);
		if (!text.ok) return setFault(text.error);
		const result = await model.importLog(text.value);
		if (result && !result.ok) setFault(logErrorWords(result.error));
		if (result?.ok) {
			const { car, added, known } = result.value;
			await noteOpened(model, car.id, { at: isoWithOffset(now()), entries: added + known, how: "opened" });
			await lookAtBackups(model, model, now());
			toasts.show(openedWords(result.value, result.value.car.name));
			onOpened?.();
		}
	}
	return <FileOpener label={label} fault={fault && openerWords().unchanged(fault)} onFiles={open} />;
}

/** What came of it, in a sentence or two. */
function openedWords({ added, known, carIsNew, decided, lacking = 0 }: Merged, name: string): string {
	const words = openerWords();
	const entries = lacking === 0 ? words.entries(added, known) : words.entriesLacking(added, known, lacking);
	if (carIsNew) return words.opened(name, entries);
	if (decided.length === 0) return words.joined(entries);
	return words.joinedDecided(entries, decided.map(({ field }) => settingName(field)).join(", "));
}
