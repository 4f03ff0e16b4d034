import { useEffect, useState } from "preact/hooks";
import type { Car } from "../../domain/vehicle";
import type { AccountView } from "../../keeper/view";
import { askToPersist } from "../../store/durability";
import { isoWithOffset, useApp } from "../app";
import { backupName, canShareFiles, download, share } from "../backupFile";
import { BackupOpener } from "./BackupOpener";

interface BackupCardProps {
	readonly car: Car;
	readonly account: AccountView | null;
}

/** Out and in again, and what stands between the log and its loss. */
export function BackupCard({ car, account }: BackupCardProps) {
	const saveBackup = useBackup(car);
	return (
		<section class="card">
			<h2>Backup</h2>
			<p>The log is on this phone and nowhere else. A file of it, kept elsewhere, outlives the phone.</p>
			{account && account.unreadable > 0 && (
				<p class="fault">
					A newer version of the app wrote {entries(account.unreadable)} that this one can’t read. They are kept, but a
					backup made now would lack them: update the app first.
				</p>
			)}
			<button type="button" class="button wide" onClick={() => saveBackup(false)}>
				Save a backup
			</button>
			{canShareFiles() && (
				<button type="button" class="button wide" onClick={() => saveBackup(true)}>
					Send a backup
				</button>
			)}
			<BackupOpener label="Open a backup" />
			<p class="small soft">
				Opening adds what is missing here and takes nothing away. Two phones join their logs of one car the same way.
			</p>
			<KeptData />
			{account && (
				<p class="small">
					On this phone: {entries(account.count)} for “{car.name}”.
				</p>
			)}
		</section>
	);
}

/** Saves the log as a file, or hands it to another app. */
export function useBackup(car: Car): (sharing: boolean) => Promise<void> {
	const { model, toasts, now } = useApp();
	return async (sharing) => {
		const text = await model.exportLog();
		if (text === null) return;
		const name = backupName(car.name, isoWithOffset(now()).slice(0, 10));
		if (sharing && (await share(text, name))) return;
		download(text, name);
		toasts.show(
			sharing
				? `The phone would not send it, so it is saved instead, as ${name}.json.`
				: `Saved as ${name}.json. Keep it away from this phone.`,
		);
	};
}

/** Whether the browser has promised to keep the data; `undefined` until it answers, null where it can't say. */
function KeptData() {
	const [kept, setKept] = useState<boolean | null | undefined>(undefined);
	useEffect(() => {
		persistedNow().then(setKept);
	}, []);
	if (kept === undefined) return null;
	if (kept === null) {
		return (
			<p class="small">This browser does not say whether it keeps the data for good. Save a backup now and then.</p>
		);
	}
	if (kept) return <p class="small">The browser has promised not to clear this data by itself.</p>;
	return (
		<>
			<p class="small">
				The browser has not promised to keep this data: it may clear it when space runs short or after weeks without a
				visit. Add the app to the home screen, and save a backup now and then.
			</p>
			<button type="button" class="button wide" onClick={async () => setKept(await askToPersist())}>
				Ask the browser to keep it
			</button>
		</>
	);
}

async function persistedNow(): Promise<boolean | null> {
	const storage = navigator.storage as StorageManager | undefined;
	if (typeof storage?.persisted !== "function") return null;
	return storage.persisted().catch(() => null);
}

function entries(count: number): string {
	return `${count} ${count === 1 ? "entry" : "entries"}`;
}
