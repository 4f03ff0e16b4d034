/** What was scanned, opened or pasted so far, and what comes of it. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { Handed, HandedFault, Handing } from "../keeper/handOver";
import { foundIn } from "../share/link";
import { readPart } from "../share/part";
import { type Collected, missingIn, readCollected, wholeOf, withPiece } from "../share/sequence";
import { longestFile, longestFileWords } from "../store/limits";
import { inTurns } from "../store/turns";
import { useApp } from "./app";
import { codeIn } from "./components/ScanCode";
import { unreadableWords } from "./components/Unreadable";
import { foreignWords } from "./foreignWords";
import { readLogFile } from "./readLogFile";
import { logErrorWords, refusalWords } from "./refusal";
import { waitingFile } from "./shared";
import { codesWords } from "./words/codes";
import { handWords } from "./words/hand";

/** Codes taken so far are kept here, between two of them and over a restart. */
const draftKey = "take";

/** Complete, and looked at. */
export interface Looked {
	readonly handed: Handed;
	readonly handing: Handing;
	/** When the tank report was made that this is; null: a log, or a part of one. */
	readonly reportOf: string | null;
}

export interface Taking {
	/** Null until the codes that were taken before are read. */
	readonly collected: Collected | null;
	readonly looked: Looked | null;
	readonly looking: boolean;
	/** A sentence; nothing was changed. */
	readonly fault: string | null;
	/** A sentence that is no fault. */
	readonly note: string | null;
	takeText(text: string): Promise<void>;
	takeFile(file: Blob): Promise<void>;
	takeWaiting(): Promise<void>;
	forget(): Promise<void>;
}

/** `opening`: something is being opened, so what was left from before is not looked at. */
export function useTaking(opening: boolean): Taking {
	const { model } = useApp();
	const [collected, setCollected] = useState<Collected | null>(null);
	const [looked, setLooked] = useState<Looked | null>(null);
	const [looking, setLooking] = useState(false);
	const [fault, setFault] = useState<string | null>(null);
	const [note, setNote] = useState<string | null>(null);
	// Codes come faster than a disk and a screen: one after the other.
	const [inTurn] = useState(inTurns);
	const current = useRef<Collected | null>(null);
	useEffect(() => {
		inTurn(async () => {
			current.current = readCollected(await model.draft(draftKey));
			setCollected(current.current);
			if (!opening && current.current && missingIn(current.current).length === 0) await lookAtCollected();
		});
	}, []);

	function refuse(sentence: string): void {
		setFault(codesWords().unchanged(sentence));
	}
	async function lookAt(handed: Handed): Promise<void> {
		setLooking(true);
		const answer = await model.lookAt(handed);
		setLooking(false);
		if (answer?.ok) setLooked({ handed, handing: answer.value, reportOf: await reportOf(handed) });
		else if (answer) refuse(await handedFaultWords(answer.error));
	}
	async function reportOf(handed: Handed): Promise<string | null> {
		const read = "text" in handed ? await model.readReport(handed.text) : null;
		return read?.ok ? (read.value.made?.at ?? null) : null;
	}
	async function lookAtCollected(): Promise<void> {
		const body = current.current && wholeOf(current.current);
		const part = body?.ok ? readPart(body.value) : body;
		if (!part) return;
		if (part.ok) return lookAt({ part: part.value });
		refuse(unreadableWords(part.error));
		await drop();
	}
	async function drop(): Promise<void> {
		current.current = null;
		setCollected(null);
		await model.dropDraft(draftKey);
	}
	async function takePiece(payload: string): Promise<boolean> {
		const before = current.current;
		const next = withPiece(before, payload);
		if (!next.ok) {
			refuse(unreadableWords(next.error));
			return false;
		}
		const words = handWords();
		const same = before?.sum === next.value.sum;
		if (before && !same && missingIn(before).length > 0) setNote(words.begun);
		else if (same && missingIn(before).length === missingIn(next.value).length) setNote(words.again);
		current.current = next.value;
		setCollected(next.value);
		await model.saveDraft(draftKey, next.value);
		return true;
	}
	function beginAnew(): void {
		setLooked(null);
		setFault(null);
		setNote(null);
	}
	async function readText(text: string): Promise<void> {
		beginAnew();
		if (
			text
				.replace(/^\ufeff/, "")
				.trimStart()
				.startsWith("{")
		)
			return lookAt({ text });
		const found = foundIn(text);
		const other = found.find(({ kind }) => kind !== "take");
		if (other) {
			location.hash = `#/${other.kind}/${other.payload}`;
			return;
		}
		if (found.length === 0) return refuse(foreignWords(text));
		for (const { payload } of found) if (!(await takePiece(payload))) return;
		if (current.current && missingIn(current.current).length === 0) await lookAtCollected();
	}
	async function readFile(file: Blob): Promise<void> {
		beginAnew();
		if (file.type.startsWith("image/")) {
			const found = await codeIn(file);
			return "text" in found ? readText(found.text) : refuse(found.fault);
		}
		if (file.size > longestFile) return refuse(handWords().tooLong(longestFileWords));
		const text = await readLogFile(new File([file], "shared"));
		return text.ok ? readText(text.value) : refuse(text.error);
	}
	return {
		collected,
		looked,
		looking,
		fault,
		note,
		takeText: (text) => inTurn(() => readText(text)),
		takeFile: (file) => inTurn(() => readFile(file)),
		takeWaiting: () =>
			inTurn(async () => {
				try {
					const file = await waitingFile();
					if (file) await readFile(file);
					else setFault(handWords().gone);
				} catch {
					refuse(handWords().unreadable);
				}
			}),
		forget: () =>
			inTurn(async () => {
				beginAnew();
				await drop();
			}),
	};
}

export async function handedFaultWords(fault: HandedFault): Promise<string> {
	switch (fault.kind) {
		case "log":
			return logErrorWords(fault.error);
		case "part":
			return handWords().faults[fault.why];
		case "store":
			return fault.fault.kind === "lost" ? "" : refusalWords(fault.fault);
	}
}
