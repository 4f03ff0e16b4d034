import { useState } from "preact/hooks";
import { useApp } from "../app";
import { reloadPage } from "../reload";
import { isAnythingUnsaved } from "../unsaved";
import { deviceWords } from "../words/device";
import { chooseLanguage, chosenLanguage, type Language, language, languageFor, languageNames } from "../words/language";
import { Choice } from "./Choice";

type Chosen = Language | "browser";

/** The language of the app. It begins anew for it, once what was typed is on the disk. */
export function LanguageChoice() {
	const { model, toasts } = useApp();
	const words = deviceWords();
	const [chosen, setChosen] = useState<Chosen>(chosenLanguage() ?? "browser");
	const [waiting, setWaiting] = useState(false);
	const options = [
		{ value: "browser" as const, label: words.ofBrowser },
		...(Object.keys(languageNames) as Language[]).map((value) => ({ value, label: languageNames[value] })),
	];
	async function choose(next: Chosen): Promise<void> {
		const wanted = next === "browser" ? null : next;
		try {
			chooseLanguage(wanted);
		} catch {
			toasts.show(words.notKept);
			return;
		}
		setChosen(next);
		setWaiting(false);
		if (languageFor(wanted) === language) return;
		if (isAnythingUnsaved()) setWaiting(true);
		else await beginAnew();
	}
	async function beginAnew(): Promise<void> {
		await model.written();
		reloadPage();
	}
	return (
		<section class="card">
			<Choice label={words.language} hint={words.takesEffect} options={options} value={chosen} onChange={choose} />
			{waiting && (
				<div class="stack" role="status">
					<p>{words.unsaved}</p>
					<button type="button" class="button wide" onClick={beginAnew}>
						{words.beginAnew}
					</button>
				</div>
			)}
		</section>
	);
}
