/** The beginning of a log: how it is written, and what its columns are. */
import { type Layout, layoutOf, type NoLayout, type Row, usualWidth } from "../domain/datalog/layout";
import { type DecimalMark, decimalMarkOf } from "../domain/datalog/logNumber";
import { recognisedAll } from "../domain/datalog/recognise";
import type { Columns } from "../domain/datalog/role";
import { err, ok, type Result } from "../domain/result";
import { type Encoding, encodingOf } from "./encoding";
import { isFileFault, type Refusal, refusalOfBytes, refusalOfText } from "./refusal";
import { newlineOf, rowReader, type Separators } from "./rows";

export interface OpenedLog extends Separators, Layout {
	readonly encoding: Encoding;
	readonly mark: DecimalMark;
	/** The first rows of numbers. */
	readonly rows: readonly Row[];
	/** As the headers tell. */
	readonly columns: Columns;
}

const headBytes = 2 ** 18;
/** Comma last: in a file with another separator it may stand before decimals. */
const delimiters = ["\t", ";", "|", ","];
/** Most rows of a log have the same number of fields. */
const regular = 0.6;

/** Rejects only where the fault is not the file's. */
export async function openLog(file: Blob): Promise<Result<OpenedLog, Refusal>> {
	let head: Uint8Array;
	try {
		head = new Uint8Array(await file.slice(0, headBytes).arrayBuffer());
	} catch (error) {
		if (!isFileFault(error)) throw error;
		return err("unreadable");
	}
	const encoding = encodingOf(head);
	const refused = refusalOfBytes(head, encoding.startsWith("utf-16"));
	if (refused) return err(refused);
	const text = new TextDecoder(encoding).decode(head, { stream: true });
	const noLog = refusalOfText(text);
	if (noLog) return err(noLog);
	const read = readHead(text, head.length === file.size);
	return read.ok ? ok({ ...read.value, encoding }) : read;
}

/** The separators that make most sense of the text. */
function readHead(text: string, isWhole: boolean): Result<Omit<OpenedLog, "encoding">, NoLayout> {
	const newline = newlineOf(text);
	let best: { readonly separators: Separators; readonly rows: readonly Row[]; readonly share: number } | null = null;
	for (const delimiter of delimiters) {
		const separators = { delimiter, newline };
		const reader = rowReader(separators);
		const rows = [...reader.push(text), ...(isWhole ? reader.end() : [])];
		const { width, share } = usualWidth(rows);
		if (width > 1 && share > (best?.share ?? 0)) best = { separators, rows, share };
		if (best && best.share > regular && typeof layoutOf(best.rows) !== "string") break;
	}
	if (!best) return err("oneColumn");
	const layout = layoutOf(best.rows);
	if (typeof layout === "string") return err(layout);
	const rows = best.rows.slice(layout.firstData, layout.firstData + 200);
	const columns = recognisedAll(layout.headers, layout.units);
	return ok({ ...best.separators, ...layout, rows, columns, mark: decimalMarkOf(rows.flat()) });
}
