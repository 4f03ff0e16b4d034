import type { Car } from "../../domain/vehicle";
import { canShareFiles } from "../backupFile";
import { useBackup } from "../useBackup";
import { backupWords } from "../words/backup";

/** The two ways in which a backup leaves the app. */
export function BackupButtons({ car }: { readonly car: Car }) {
	const saveBackup = useBackup(car);
	return (
		<>
			<button type="button" class="button wide" onClick={() => saveBackup(false)}>
				{backupWords().save}
			</button>
			{canShareFiles() && (
				<button type="button" class="button wide" onClick={() => saveBackup(true)}>
					{backupWords().send}
				</button>
			)}
		</>
	);
}
