import { useState } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import { isoWithOffset, useApp } from "../app";
import { fileKey, type Kept } from "../automaticBackup";
import { backupName } from "../backupFile";
import { lookAtBackups } from "../backupState";
import { troubleWords } from "../backupWords";
import { askPermission, canChooseFile, chooseFile } from "../chosenFile";
import { ago } from "../format";

interface AutomaticBackupProps {
	readonly car: Car;
	/** Null: none is chosen. */
	readonly file: Kept | null;
}

/** The backup that writes itself, where the browser can. */
export function AutomaticBackup({ car, file }: AutomaticBackupProps) {
	const { model, toasts, now } = useApp();
	const [fault, setFault] = useState(false);
	async function choose(): Promise<void> {
		setFault(false);
		try {
			const name = backupName(car.name, `since-${isoWithOffset(now()).slice(0, 10)}`);
			const handle = await chooseFile(`${name}.json`);
			if (!handle) return;
			await model.saveDraft(fileKey(car.id), { handle, writtenAt: null });
		} catch {
			setFault(true);
		}
		await lookAtBackups(model, model, now());
	}
	async function stop(): Promise<void> {
		await model.dropDraft(fileKey(car.id));
		await lookAtBackups(model, model, now());
		toasts.show("The file stays as it is. It is written no more.");
	}
	if (!file && !canChooseFile()) return null;
	return (
		<>
			<h3>A backup after every save</h3>
			{file ? (
				<>
					<p>
						The log is written to “{file.handle.name}”.{" "}
						{file.writtenAt === null ? "Not written yet." : `Last written ${ago(file.writtenAt, now())}.`}
					</p>
					{file.trouble && <p class="fault">{troubleWords[file.trouble]}</p>}
					{file.trouble === "ask" && <AllowWriting file={file} />}
				</>
			) : (
				<p>
					Choose a file once, and the app writes the log to it after every save. Best in a folder that is copied to
					another device.
				</p>
			)}
			<button type="button" class="button wide" onClick={choose}>
				{file ? "Choose another file…" : "Choose a file…"}
			</button>
			{fault && (
				<p class="fault" role="alert">
					The browser would not give that file: choose another place.
				</p>
			)}
			<p class="small soft">Give it a new name: a file of the same name would be emptied first.</p>
			{file && (
				<button type="button" class="button wide" onClick={stop}>
					Stop writing it
				</button>
			)}
		</>
	);
}

/** One tap gives the browser the driver's word again, and writes what was missed. */
export function AllowWriting({ file }: { readonly file: Kept }) {
	const { model, now } = useApp();
	async function allow(): Promise<void> {
		await askPermission(file.handle).catch(() => "denied");
		await lookAtBackups(model, model, now());
	}
	return (
		<button type="button" class="button wide" onClick={allow}>
			Let the app write to it
		</button>
	);
}
