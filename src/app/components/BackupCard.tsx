import { useEffect } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import type { AccountView } from "../../keeper/view";
import { useAppState } from "../app";
import { lookAtBackups } from "../backupState";
import { lastBackupWords } from "../backupWords";
import { backupWords } from "../words/backup";
import { openerWords } from "../words/opener";
import { AutomaticBackup } from "./AutomaticBackup";
import { BackupButtons } from "./BackupButtons";
import { BackupOpener } from "./BackupOpener";
import { KeptData } from "./KeptData";

interface BackupCardProps {
	readonly car: Car;
	readonly account: AccountView | null;
}

/** Out and in again, and what stands between the log and its loss. */
export function BackupCard({ car, account }: BackupCardProps) {
	const { model, state, now } = useAppState();
	useEffect(() => {
		lookAtBackups(model, model, now());
	}, [car.id, account?.count]);
	const backup = state.backup?.carId === car.id ? state.backup : null;
	const words = backupWords();
	return (
		<section class="card">
			<h2>{words.title}</h2>
			<p>{words.about}</p>
			{backup && account && (
				<p>
					<strong>{lastBackupWords(backup.notes, account.events.length, now())}</strong>
				</p>
			)}
			{account && account.unreadable > 0 && <p class="fault">{words.unreadable(account.unreadable)}</p>}
			<BackupButtons car={car} />
			<BackupOpener label={openerWords().open} />
			<p class="small soft">{words.opening}</p>
			{backup && <AutomaticBackup car={car} file={backup.file} />}
			{backup && <KeptData kept={backup.kept} />}
			{account && <p class="small">{words.here(account.count, car.name)}</p>}
		</section>
	);
}
