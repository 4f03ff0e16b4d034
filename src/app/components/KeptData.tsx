import { askToPersist } from "../../store/durability";
import { useApp } from "../app";
import { lookAtBackups } from "../backupState";
import { isInstalled, isSafariEngine } from "../keptData";
import { keptWords } from "../words/kept";

interface KeptDataProps {
	/** Whether the browser has promised to keep the data; null: it does not say. */
	readonly kept: boolean | null;
}

/** What this browser may do to the data, as far as a page can tell. */
export function KeptData({ kept }: KeptDataProps) {
	const { model, now } = useApp();
	const words = keptWords();
	const installed = isInstalled();
	const weekly = isSafariEngine() && !installed;
	async function ask(): Promise<void> {
		await askToPersist();
		await lookAtBackups(model, model, now());
	}
	return (
		<>
			<h3>{words.title}</h3>
			{weekly && <p class="small">{words.weekly}</p>}
			{kept ? (
				<p class="small">{words.promised}</p>
			) : kept === null ? (
				<p class="small">{words.silent}</p>
			) : (
				<>
					<p class="small">
						{words.unpromised}
						{!installed && !weekly && ` ${words.installing}`}
					</p>
					<button type="button" class="button wide" onClick={ask}>
						{words.ask}
					</button>
				</>
			)}
			<p class="small soft">{words.private}</p>
		</>
	);
}
