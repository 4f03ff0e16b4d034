/** Text into rows of fields, piece by piece. */
import Papa from "papaparse";
import type { Row } from "../domain/datalog/layout";

export interface Separators {
	readonly delimiter: string;
	readonly newline: "\r\n" | "\n" | "\r";
}

export interface RowReader {
	/** Rows that are complete by now; what is begun waits for the next piece. */
	push(piece: string): readonly Row[];
	/** The last row, where no line end follows it. */
	end(): readonly Row[];
}

/** A row longer than this is a quotation mark that nobody closed. */
const longestRow = 100_000;

export function rowReader(separators: Separators): RowReader {
	const parser = new Papa.Parser(separators);
	const withoutQuotes = new Papa.Parser({ ...separators, fastMode: true });
	let begun = "";
	function parsed(text: string, isEnd: boolean): readonly Row[] {
		let result = parser.parse(text, 0, !isEnd);
		// Before the end a quotation mark may still be closed by what comes.
		const swallowed = isEnd ? result.errors.length > 0 : text.length - result.meta.cursor > longestRow;
		if (swallowed) result = withoutQuotes.parse(text, 0, !isEnd);
		begun = isEnd ? "" : text.slice(result.meta.cursor);
		return result.data;
	}
	return {
		push: (piece) => parsed(begun + piece, false),
		end: () => (begun === "" ? [] : parsed(begun, true)),
	};
}

export function newlineOf(text: string): Separators["newline"] {
	const found = /\r\n|\n|\r/.exec(text)?.[0];
	return found === "\r\n" || found === "\r" ? found : "\n";
}
