import { useId, useRef } from "preact/hooks";
import "./FileOpener.css";

interface FileOpenerProps {
	readonly label: string;
	readonly main?: boolean;
	readonly multiple?: boolean;
	/** What was wrong with the last file, in words. */
	readonly fault?: string | null;
	readonly onFiles: (files: readonly File[]) => Promise<void>;
}

/** A button that opens files of the app; the next ones only after it is done with these. */
export function FileOpener({ label, main = false, multiple = false, fault = null, onFiles }: FileOpenerProps) {
	const busy = useRef(false);
	const id = useId();
	async function open(input: HTMLInputElement): Promise<void> {
		const files = [...(input.files ?? [])];
		if (files.length === 0 || busy.current) return;
		busy.current = true;
		try {
			await onFiles(files);
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
				multiple={multiple}
				accept=".json,.txt,application/json,text/plain"
				aria-invalid={fault ? true : undefined}
				aria-describedby={fault ? `${id}-fault` : undefined}
				onChange={(event) => open(event.currentTarget)}
			/>
			<label class={main ? "button main" : "button wide"} for={id}>
				{label}
			</label>
			{fault && (
				<p class="fault" id={`${id}-fault`} role="alert">
					{fault}
				</p>
			)}
		</div>
	);
}
