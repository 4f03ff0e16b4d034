import { askToPersist } from "../../store/durability";
import { useApp } from "../app";
import { lookAtBackups } from "../backupState";
import { isInstalled, isSafariEngine } from "../keptData";

interface KeptDataProps {
	/** Whether the browser has promised to keep the data; null: it does not say. */
	readonly kept: boolean | null;
}

/** What this browser may do to the data, as far as a page can tell. */
export function KeptData({ kept }: KeptDataProps) {
	const { model, now } = useApp();
	const installed = isInstalled();
	const weekly = isSafariEngine() && !installed;
	async function ask(): Promise<void> {
		await askToPersist();
		await lookAtBackups(model, model, now());
	}
	return (
		<>
			<h3>What the browser may do</h3>
			{weekly && (
				<p class="small">
					This looks like Safari’s engine. It deletes what a page has stored after seven days of use without a visit to
					the page. An app on the home screen is spared that, but begins with an empty log: save a backup here, add the
					app to the home screen, and open the backup there.
				</p>
			)}
			{kept ? (
				<p class="small">
					The browser has promised not to clear this data by itself. It stays until you delete the app’s data in the
					browser’s settings.
				</p>
			) : kept === null ? (
				<p class="small">This browser does not say whether it keeps the data for good. Save a backup now and then.</p>
			) : (
				<>
					<p class="small">
						The browser has not promised to keep this data: it may clear all of it when space runs short.
						{!installed && !weekly && " An app on the home screen is more likely to be promised it."}
					</p>
					<button type="button" class="button wide" onClick={ask}>
						Ask the browser to keep it
					</button>
				</>
			)}
			<p class="small soft">
				In a private window all data goes with the window; an app can’t tell whether it is in one. Deleting the
				browser’s history may delete the data, too.
			</p>
		</>
	);
}
