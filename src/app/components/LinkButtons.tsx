import { useState } from "preact/hooks";
import { useApp } from "../app";
import { canShareFiles, saveText, share } from "../backupFile";
import { codesWords } from "../words/codes";
import "./LinkButtons.css";

interface LinkButtonsProps {
	/** Null: what it would hold is too long for one. */
	readonly link: string | null;
	/** What stands above the link in a file. */
	readonly head: string;
	/** The name of that file, without its ending. */
	readonly name: string;
	readonly links: readonly string[];
}

/** The ways in which a card, or entries, leave as text. */
export function LinkButtons({ link, head, name, links }: LinkButtonsProps) {
	const { toasts } = useApp();
	const words = codesWords();
	const [shown, setShown] = useState(false);
	const text = `${head}\n\n${(link ? [link] : links).join("\n")}\n`;
	async function send(link: string): Promise<void> {
		try {
			await navigator.share({ url: link });
		} catch (error) {
			// Who changes his mind wants nothing else instead.
			if (!(error instanceof DOMException && error.name === "AbortError")) await copy(link);
		}
	}
	async function copy(link: string): Promise<void> {
		try {
			await navigator.clipboard.writeText(link);
			toasts.show(words.copied);
		} catch {
			setShown(true);
			toasts.show(words.uncopied);
		}
	}
	async function file(sharing: boolean): Promise<void> {
		const sent = sharing ? await share(text, name) : "refused";
		if (sent !== "refused") return;
		saveText(text, name);
		toasts.show((sharing ? words.unsent : words.saved)(`${name}.txt`));
	}
	return (
		<>
			{link !== null && typeof navigator.share === "function" && (
				<button type="button" class="button wide" onClick={() => send(link)}>
					{words.send}
				</button>
			)}
			{link !== null && (
				<button type="button" class="button wide" onClick={() => copy(link)}>
					{words.copy}
				</button>
			)}
			{canShareFiles() && (
				<button type="button" class="button wide" onClick={() => file(true)}>
					{words.sendFile}
				</button>
			)}
			<button type="button" class="button wide" onClick={() => file(false)}>
				{words.saveFile}
			</button>
			{link !== null && (
				<details open={shown}>
					<summary>{words.linkItself}</summary>
					<p class="small linktext">{link}</p>
				</details>
			)}
		</>
	);
}
