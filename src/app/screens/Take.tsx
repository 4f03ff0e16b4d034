import { useEffect, useState } from "preact/hooks";
import { holdingsOf, packedHoldings } from "../../share/holdings";
import { linkTo } from "../../share/link";
import { missingIn } from "../../share/sequence";
import { longestFileWords } from "../../store/limits";
import { useAppState } from "../app";
import { appAddress } from "../appAddress";
import { FileOpener } from "../components/FileOpener";
import { PasteField } from "../components/PasteField";
import { QrCode } from "../components/QrCode";
import { ScanCode } from "../components/ScanCode";
import { useUnsaved } from "../unsaved";
import { useTaking } from "../useTaking";
import { cardWords } from "../words/card";
import { codesWords } from "../words/codes";
import { handWords } from "../words/hand";
import { HandingCard } from "./hand/HandingCard";

/** A file that waits for the screen is told by such an id, and why one could not be put by; anything else is a code. */
const waiting = /^file\d*(?:-(large|full))?$/;

/** Everything that comes from elsewhere comes in here: codes, links, files. */
export function TakeScreen({ id }: { readonly id: string | null }) {
	const { state } = useAppState();
	const words = handWords();
	const taking = useTaking(id !== null);
	const { looked, looking, fault, note, collected } = taking;
	const handed = id === null ? null : waiting.exec(id);
	useEffect(() => {
		if (id === null) return;
		if (!handed) taking.takeText(`#/take/${id}`);
		else if (!handed[1]) taking.takeWaiting();
	}, [id]);
	// Codes are kept until they are done with; a file is only here.
	useUnsaved(looked !== null && "text" in looked.handed);
	if (looked) return <HandingCard looked={looked} onLeave={taking.forget} />;
	const missing = collected ? missingIn(collected) : [];
	const told = fault ?? (handed?.[1] && !looking ? notPutBy(handed[1]) : null);
	return (
		<>
			<section class="card">
				<h2>{words.takeTitle}</h2>
				<p>{words.takeAbout}</p>
				{told && (
					<p class="fault" role="alert">
						{told}
					</p>
				)}
				{looking && (
					<p class="soft" role="status">
						{words.looking}
					</p>
				)}
				{collected && missing.length > 0 && (
					<div class="stack" role="status">
						<p class="number">
							<strong>{words.some(collected.count - missing.length, collected.count)}</strong>{" "}
							{words.missing(missing.map((place) => place + 1).join(", "))} {words.anyOrder}
						</p>
					</div>
				)}
				{note && <p role="status">{note}</p>}
				<ScanCode onText={taking.takeText} />
				<FileOpener label={words.openFile} onFiles={([file]) => taking.takeFile(file)} />
				<PasteField label={words.paste} button={words.pasteGo} onText={(text) => void taking.takeText(text)} />
				{collected && (
					<button type="button" class="button wide" onClick={taking.forget}>
						{words.forget}
					</button>
				)}
				<a class="button wide" href={state.car ? "#/car" : "#/setup"}>
					{cardWords().back}
				</a>
			</section>
			<Holdings />
		</>
	);
}

function notPutBy(why: string): string {
	const words = handWords();
	return codesWords().unchanged(why === "full" ? words.notPutBy : words.tooLong(longestFileWords));
}

/** What this phone has, for the other one to know what it lacks. */
function Holdings() {
	const { state } = useAppState();
	const words = handWords();
	const [shown, setShown] = useState(false);
	const { car, events } = state;
	if (!car || !events) return null;
	return (
		<details class="card" onToggle={(event) => setShown(event.currentTarget.open)}>
			<summary>{words.haveTitle}</summary>
			<p>{words.haveAbout(car.name)}</p>
			{shown && (
				<QrCode
					text={linkTo(appAddress(), "hand", packedHoldings(holdingsOf(car, events)))}
					label={words.haveTitle}
					stands="low"
				/>
			)}
		</details>
	);
}
