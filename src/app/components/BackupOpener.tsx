import { useId, useRef, useState } from "preact/hooks";
import type { Merged } from "../../store/store";
import { isoWithOffset, useApp } from "../app";
import { noteOpened } from "../backupNotes";
import { lookAtBackups } from "../backupState";
import { readLogFile } from "../readLogFile";
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
			const result = text.ok ? await model.importLog(text.value) : text;
			if (result && !result.ok) setFault(result.error);
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
					{fault} Nothing was changed.
				</p>
			)}
		</div>
	);
}

/** What came of it, in a sentence or two. */
function openedWords({ added, known, carIsNew, keptOwnSettings, lacking = 0 }: Merged, name: string): string {
	const lacks = lacking === 0 ? "" : `; the file lacks ${lacking} that its phone had written`;
	const entries = `${added} new ${added === 1 ? "entry" : "entries"}, ${known} known already${lacks}`;
	if (carIsNew) return `“${name}” is here now: ${entries}.`;
	const kept = keptOwnSettings ? " The file has another name or tank for it; this phone’s own stay." : "";
	return `The log of this car was joined: ${entries}.${kept}`;
}
