import { useState } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import { isoWithOffset, useApp } from "../app";
import { fileKey, type Kept } from "../automaticBackup";
import { backupName } from "../backupFile";
import { lookAtBackups } from "../backupState";
import { troubleWords } from "../backupWords";
import { askPermission, canChooseFile, chooseFile } from "../chosenFile";
import { ago } from "../format";
import { backupWords } from "../words/backup";

interface AutomaticBackupProps {
	readonly car: Car;
	/** Null: none is chosen. */
	readonly file: Kept | null;
}

/** The backup that writes itself, where the browser can. */
export function AutomaticBackup({ car, file }: AutomaticBackupProps) {
	const { model, toasts, now } = useApp();
	const [fault, setFault] = useState(false);
	const words = backupWords();
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
		toasts.show(words.stopped);
	}
	if (!file && !canChooseFile()) return null;
	return (
		<>
			<h3>{words.automatic}</h3>
			{file ? (
				<>
					<p>
						{words.writtenTo(file.handle.name)}{" "}
						{file.writtenAt === null ? words.notYet : words.lastWritten(ago(file.writtenAt, now()))}
					</p>
					{file.trouble && <p class="fault">{troubleWords(file.trouble)}</p>}
					{file.trouble === "ask" && <AllowWriting file={file} />}
				</>
			) : (
				<p>{words.chooseOnce}</p>
			)}
			<button type="button" class="button wide" onClick={choose}>
				{file ? words.chooseAnother : words.choose}
			</button>
			{fault && (
				<p class="fault" role="alert">
					{words.noFile}
				</p>
			)}
			<p class="small soft">{words.newName}</p>
			{file && (
				<button type="button" class="button wide" onClick={stop}>
					{words.stop}
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
			{backupWords().allow}
		</button>
	);
}
