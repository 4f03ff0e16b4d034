import { useEffect, useState } from "preact/hooks";
import { isoWithOffset, useAppState } from "../app";
import type { Kept, Trouble } from "../automaticBackup";
import { notePostponed } from "../backupNotes";
import { type BackupState, lookAtBackups } from "../backupState";
import { missingWords, riskWords, troubleWords } from "../backupWords";
import { readFreshDraft } from "../fillDraft";
import { isInstalled, isSafariEngine } from "../keptData";
import { isAmiss } from "../notices";
import type { State } from "../state";
import { useBackup } from "../useBackup";
import { backupWords } from "../words/backup";
import { AllowWriting } from "./AutomaticBackup";
import { BackupButtons } from "./BackupButtons";
import "./BackupReminder.css";

interface BackupReminderProps {
	/** No warning stands above it. */
	readonly alone: boolean;
}

/** So long after a fill the driver may still be at the pump. */
const atPumpMs = 15 * 60_000;

/** On the Tank screen: a line, or a card where it matters more. Nothing while a fill is going on or something is amiss. */
export function BackupReminder({ alone }: BackupReminderProps) {
	const { state, now } = useAppState();
	const filling = useFilling(state, now());
	const { car, account, backup } = state;
	if (!car || !account || backup?.carId !== car.id || !backup.due) return null;
	if (filling || isAmiss(state, now())) return null;
	const Shown = backup.due === "strong" && alone ? Card : Line;
	return <Shown car={car} backup={backup} entries={account.events.length} />;
}

interface ReminderProps {
	readonly car: NonNullable<State["car"]>;
	readonly backup: BackupState;
	readonly entries: number;
}

function Line({ car, backup, entries }: ReminderProps) {
	const saveBackup = useBackup(car);
	const missing = missingWords(backup.notes, entries);
	if (backup.file?.trouble) {
		return (
			<section class="stack" aria-label={backupWords().title}>
				<p class="soft">{missing}</p>
				<FileTrouble file={backup.file} trouble={backup.file.trouble} />
			</section>
		);
	}
	return (
		<section class="backupline" aria-label={backupWords().title}>
			<p class="soft">{missing}</p>
			<button type="button" class="button" onClick={() => saveBackup(false)}>
				{backupWords().save}
			</button>
		</section>
	);
}

function Card({ car, backup, entries }: ReminderProps) {
	const { model, now } = useAppState();
	async function postpone(): Promise<void> {
		await notePostponed(model, car.id, { at: isoWithOffset(now()), entries });
		await lookAtBackups(model, model, now());
	}
	return (
		<section class="card" aria-label={backupWords().reminder}>
			<h2>{backupWords().reminder}</h2>
			<p>
				{missingWords(backup.notes, entries)} {riskWords(backup.kept, isSafariEngine() && !isInstalled())}
			</p>
			{backup.file?.trouble && <FileTrouble file={backup.file} trouble={backup.file.trouble} />}
			<BackupButtons car={car} />
			<button type="button" class="button wide" onClick={postpone}>
				{backupWords().notNow}
			</button>
		</section>
	);
}

function FileTrouble({ file, trouble }: { readonly file: Kept; readonly trouble: Trouble }) {
	return (
		<>
			<p>
				{backupWords().shouldBeIn(file.handle.name)} {troubleWords(trouble)}
			</p>
			{trouble === "ask" ? (
				<AllowWriting file={file} />
			) : (
				<a class="button wide" href="#/car">
					{backupWords().seeToIt}
				</a>
			)}
		</>
	);
}

/** Whether a fill is under way: one is half typed, or was poured just now. True until it is known. */
function useFilling({ car, now: tank }: State, now: number): boolean {
	const { model } = useAppState();
	const [typing, setTyping] = useState(true);
	useEffect(() => {
		model.draft(`${car?.id}/fill`).then((raw) => {
			const draft = readFreshDraft(raw, now);
			const { pours = [], gauge = null, odometer = "", plan = null } = draft ?? {};
			setTyping(pours.some(({ typed }) => typed !== "") || gauge !== null || odometer !== "" || plan !== null);
		});
	}, [car?.id]);
	return typing || (tank?.last.kind === "fill" && now - Date.parse(tank.last.at) < atPumpMs);
}
