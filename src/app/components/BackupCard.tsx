import { useEffect } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import type { AccountView } from "../../keeper/view";
import { useAppState } from "../app";
import { lookAtBackups } from "../backupState";
import { count, lastBackupWords } from "../backupWords";
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
	return (
		<section class="card">
			<h2>Backup</h2>
			<p>The app keeps the log on this phone alone. A file of it, kept elsewhere, outlives the phone.</p>
			{backup && account && (
				<p>
					<strong>{lastBackupWords(backup.notes, account.events.length, now())}</strong>
				</p>
			)}
			{account && account.unreadable > 0 && (
				<p class="fault">
					A newer version of the app wrote {count(account.unreadable)} that this one can’t read. They are kept, but a
					backup made now would lack them: update the app first.
				</p>
			)}
			<BackupButtons car={car} />
			<BackupOpener label="Open a backup" />
			<p class="small soft">
				Opening adds what is missing here and takes nothing away. Two phones join their logs of one car the same way.
			</p>
			{backup && <AutomaticBackup car={car} file={backup.file} />}
			{backup && <KeptData kept={backup.kept} />}
			{account && (
				<p class="small">
					On this phone: {count(account.count)} for “{car.name}”.
				</p>
			)}
		</section>
	);
}
