import { useId, useRef, useState } from "preact/hooks";
import type { Merged } from "../../store/store";
import { isoWithOffset, useApp } from "../app";
import { noteOpened } from "../backupNotes";
import { lookAtBackups } from "../backupState";
import { readLogFile } from "../readLogFile";
import { logErrorWords } from "../refusal";
import { settingName } from "../settingName";
import { openerWords } from "../words/opener";
import "./BackupOpener.css";

interface BackupOpenerProps {
	readonly label: string;
	readonly onOpened?: () => void;
}

/** Takes in a log file: a backup, or the log from another phone. */
export function BackupOpener({ label, onOpened }: BackupOpenerProps) {
	const { model, toasts, now } = useApp();
	const [fault, setFault] = useState<string | null>(null);
	const busy = useRef(false);
	const id = useId();
	async function open(input: HTMLInputElement): Promise<void> {
		const file = input.files?.[0];
		if (!file || busy.current) return;
		busy.current = true;
		setFault(null);
		try {
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
		} finally {
			busy.current = false;
			// The same file may be chosen again once it is mended.
			input.value = "";
		}
	}
	return (
		<div class="stack opener">
			<input
				id={id}
				type="file"
				accept=".json,.txt,application/json,text/plain"
				aria-invalid={fault ? true : undefined}
				aria-describedby={fault ? `${id}-fault` : undefined}
				onChange={(event) => open(event.currentTarget)}
			/>
			<label class="button wide" for={id}>
				{label}
			</label>
			{fault && (
				<p class="fault" id={`${id}-fault`} role="alert">
					{openerWords().unchanged(fault)}
				</p>
			)}
		</div>
	);
}

/** What came of it, in a sentence or two. */
function openedWords({ added, known, carIsNew, decided, lacking = 0 }: Merged, name: string): string {
	const words = openerWords();
	const entries = lacking === 0 ? words.entries(added, known) : words.entriesLacking(added, known, lacking);
	if (carIsNew) return words.opened(name, entries);
	if (decided.length === 0) return words.joined(entries);
	return words.joinedDecided(entries, decided.map(({ field }) => settingName(field)).join(", "));
}
