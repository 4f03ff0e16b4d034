/** A data log from the choice of a file to what it tells; what the driver said of its columns is on disk with every change. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { OpenedLog } from "../datalog/openLog";
import type { LogRead } from "../datalog/readLog";
import { isFileFault } from "../datalog/refusal";
import { type Columns, isOfUse, lacksOf } from "../domain/datalog/role";
import { useApp } from "./app";
import type { EthanolSource, OfferKind } from "./dataLogReadings";
import type { Trouble } from "./dataLogWords";
import { type LogReader, startLogReader } from "./logReader";
import { columnsKey, recalled, remembering } from "./rememberedColumns";
import { useDraft } from "./useDraft";

/** What was chosen so far, for one file: after a killed app the same file brings it back. */
export interface DataLogDraft {
	readonly file: string;
	/** Null: as recognised or remembered. */
	readonly columns: Columns | null;
	/** Null: as the file tells; else ISO 8601, or nothing for now. */
	readonly when: { readonly at: string | null } | null;
	readonly chosen: OfferKind | null;
	readonly source: EthanolSource;
}

interface Opened {
	readonly file: File;
	readonly log: OpenedLog;
	readonly columns: Columns;
}

export type Stage =
	| { readonly is: "choosing"; readonly refusal: Trouble | null }
	| { readonly is: "opening" }
	| ({ readonly is: "mapping" } & Opened)
	| ({ readonly is: "reading"; readonly share: number } & Opened)
	| ({ readonly is: "read"; readonly read: LogRead } & Opened);

const nothing: DataLogDraft = { file: "", columns: null, when: null, chosen: null, source: "inferred" };

export function useDataLog(carId: string) {
	const { model } = useApp();
	const { draft, change } = useDraft<DataLogDraft>(`${carId}/data log`, readDraft, () => nothing);
	const [stage, setStage] = useState<Stage>({ is: "choosing", refusal: null });
	const reader = useRef<Promise<LogReader> | null>(null);
	const latest = useRef(0);
	useEffect(() => stop, []);

	function stop(): void {
		latest.current++;
		reader.current?.then((running) => running.close()).catch(() => {});
		reader.current = null;
	}
	/** Does it unless something else was begun meanwhile; a failure is told, and reported where it is the app's own. */
	async function attempt(work: (reader: LogReader, go: (stage: Stage) => boolean) => Promise<void>): Promise<void> {
		stop();
		const mine = latest.current;
		const go = (next: Stage) => {
			if (mine === latest.current) setStage(next);
			return mine === latest.current;
		};
		reader.current = startLogReader();
		try {
			await work(await reader.current, go);
		} catch (error) {
			const refusal = isFileFault(error) ? "unreadable" : "broken";
			if (refusal === "broken") globalThis.reportError?.(error);
			go({ is: "choosing", refusal });
		}
		// Its memory is given back at once.
		if (mine === latest.current) stop();
	}

	async function readWith(running: LogReader, go: (stage: Stage) => boolean, opened: Opened): Promise<void> {
		go({ ...opened, is: "reading", share: 0 });
		const read = await running.read(opened.file, opened.columns, (share) => go({ ...opened, is: "reading", share }));
		go({ ...opened, is: "read", read });
	}

	return {
		draft: draft ?? nothing,
		/** False until what was chosen before is known. */
		ready: draft !== undefined,
		stage,
		change: (part: Partial<DataLogDraft>) => change({ ...(draft ?? nothing), ...part }),
		choose(file: File): Promise<void> {
			return attempt(async (running, go) => {
				go({ is: "opening" });
				const log = await running.open(file);
				if (!log.ok) {
					go({ is: "choosing", refusal: log.error });
					return;
				}
				const key = `${file.name} ${file.size} ${file.lastModified}`;
				const before = draft?.file === key ? draft : null;
				const { headers } = log.value;
				const fits = before?.columns?.length === headers.length ? before.columns : null;
				const known = fits ?? recalled(await model.preference(columnsKey), headers);
				const columns = known ?? log.value.columns;
				const opened = { file, log: log.value, columns };
				if (!before) await change({ ...nothing, file: key });
				// Columns that were being told when the app was killed are gone on with.
				const complete = known ? isOfUse(columns) : lacksOf(columns).length === 0;
				if (fits || !complete) go({ ...opened, is: "mapping" });
				else await readWith(running, go, opened);
			});
		},
		/** Back to what the columns are. */
		remap({ file, log, columns }: Opened): void {
			setStage({ file, log, columns, is: "mapping" });
		},
		tell(opened: Opened, columns: Columns): void {
			setStage({ ...opened, columns, is: "mapping" });
			change({ ...(draft ?? nothing), columns });
		},
		/** Reads the log with these columns, and remembers them for files like it. */
		read(opened: Opened): Promise<void> {
			return attempt(async (running, go) => {
				const { headers } = opened.log;
				const stored = await model.preference(columnsKey);
				await model.savePreference(columnsKey, remembering(stored, headers, opened.columns));
				await change({ ...(draft ?? nothing), columns: null });
				await readWith(running, go, { file: opened.file, log: opened.log, columns: opened.columns });
			});
		},
		cancel(): void {
			stop();
			setStage({ is: "choosing", refusal: null });
		},
	};
}

function readDraft(raw: unknown): DataLogDraft | null {
	const draft = raw as Partial<DataLogDraft> | null | undefined;
	return typeof draft?.file === "string" ? { ...nothing, ...draft } : null;
}
