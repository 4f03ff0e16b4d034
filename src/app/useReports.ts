/** Many reports opened at once; nothing of them is kept unless the tuner says so. */
import { useEffect, useRef, useState } from "preact/hooks";
import { ok } from "../domain/result";
import type { Glance } from "../keeper/glance";
import { longestFileWords } from "../store/limits";
import { inTurns } from "../store/turns";
import { isoWithOffset, useApp } from "./app";
import { noteOpened } from "./backupNotes";
import { checkedReport, type OpenedReport, type Source, type Unchecked, withReport } from "./openedReports";
import { textsIn } from "./pastedReports";
import { readLogFile } from "./readLogFile";
import { logErrorWords, refusalWords } from "./refusal";
import { waitingFiles } from "./shared";
import { openerWords } from "./words/opener";
import { reportWords } from "./words/report";

/** A shop’s cars; what is beyond was dropped here by accident. */
export const mostReports = 200;

export interface NotOpened {
	readonly name: string;
	readonly fault: string;
}

export interface Reports {
	readonly opened: readonly OpenedReport[];
	readonly notOpened: readonly NotOpened[];
	openFiles(files: readonly File[]): Promise<void>;
	openWaiting(): Promise<void>;
	/** False: there is nothing in it. */
	openText(text: string): boolean;
	keep(report: OpenedReport): Promise<void>;
	clear(): void;
}

export function useReports(): Reports {
	const { model, toasts, now } = useApp();
	const [opened, setOpened] = useState<readonly OpenedReport[]>([]);
	const [notOpened, setNotOpened] = useState<readonly NotOpened[]>([]);
	const current = useRef<readonly OpenedReport[]>([]);
	const [inTurn] = useState(inTurns);
	const shown = useRef(true);
	const pasted = useRef(0);
	useEffect(
		() => () => {
			shown.current = false;
		},
		[],
	);

	function set(next: readonly OpenedReport[]): void {
		current.current = next;
		setOpened(next);
	}
	function refuse(name: string, fault: string): void {
		setNotOpened((before) => [...before, { name, fault }]);
	}
	async function textOf(source: Source): Promise<string | null> {
		if ("text" in source) return source.text;
		const text = await readLogFile(source.file);
		if (text.ok) return text.value;
		refuse(source.name, text.error);
		return null;
	}
	async function open(sources: readonly Source[]): Promise<void> {
		for (const source of sources.slice(0, mostReports)) {
			const text = shown.current ? await textOf(source) : null;
			const read = text === null ? null : await model.readReport(text);
			if (read?.ok) set(withReport(current.current, source, read.value));
			else if (read) refuse(source.name, logErrorWords(read.error));
		}
		const over = sources.slice(mostReports);
		if (over.length > 0) refuse(over[0].name, reportWords().tooMany(mostReports));
		await checkAll();
	}
	/** Holds what is said against the entries, one by one: it takes a phone a second or two each. */
	async function checkAll(): Promise<void> {
		for (;;) {
			const next = current.current.find(({ check }) => check === "waiting");
			if (!next || !shown.current) return;
			const done = checkedReport(next, await found(next.source));
			set(current.current.map((each) => (each.source === next.source ? { ...each, ...done, kept: each.kept } : each)));
		}
	}
	async function found(source: Source): Promise<Glance | Unchecked> {
		// It was read once: what can't be read now has changed or gone.
		const text = "text" in source ? ok(source.text) : await readLogFile(source.file);
		if (!text.ok) return "gone";
		try {
			return (await model.checkReport(text.value)) ?? "tooLong";
		} catch {
			return "failed";
		}
	}
	/** What the app was opened with, as if it had been chosen here. */
	async function openWaiting(): Promise<void> {
		const words = reportWords();
		const waiting = await waitingFiles().catch(() => []);
		const sources: Source[] = [];
		for (const { name, open: give } of waiting) {
			try {
				const file = await give();
				if (file) sources.push({ name, file });
				else refuse(name, openerWords().tooLong(longestFileWords));
			} catch {
				refuse(name, openerWords().unreadable);
			}
		}
		if (waiting.length === 0) refuse(words.handed, words.noneHanded);
		await open(sources);
	}
	async function keep(report: OpenedReport): Promise<void> {
		const text = await textOf(report.source);
		const taken = text === null ? null : await model.watch({ text });
		if (!taken) return;
		if (!taken.ok) {
			const { error } = taken;
			if (error.kind === "log") refuse(report.glance.name, logErrorWords(error.error));
			if (error.kind === "store" && error.fault.kind !== "lost")
				refuse(report.glance.name, await refusalWords(error.fault));
			return;
		}
		const { car, added, known } = taken.value;
		// A whole log in a file is a backup.
		await noteOpened(model, car.id, { at: isoWithOffset(now()), entries: added + known, how: "opened" });
		set(current.current.map((each) => (each.source === report.source ? { ...each, kept: true } : each)));
		toasts.show(reportWords().kept(car.name));
	}
	return {
		opened,
		notOpened,
		openFiles: (files) => inTurn(() => open(files.map((file) => ({ name: file.name, file })))),
		openWaiting: () => inTurn(openWaiting),
		openText(text) {
			const texts = textsIn(text);
			const sources = texts.map((each) => ({ name: reportWords().pasted(++pasted.current), text: each }));
			if (sources.length > 0) inTurn(() => open(sources));
			return sources.length > 0;
		},
		keep,
		clear() {
			set([]);
			setNotOpened([]);
		},
	};
}
