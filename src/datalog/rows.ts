/** Text into rows of fields, piece by piece. Whatever the text, its cost grows with its length, and a row and a piece are held at most. */
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

/** Characters. A row longer than this is a quotation mark that nobody closed, or no row at all, and cut. */
const longestRow = 100_000;

export function rowReader(separators: Separators): RowReader {
	const { delimiter, newline } = separators;
	const parser = new Papa.Parser(separators);
	const withoutQuotes = new Papa.Parser({ ...separators, fastMode: true });
	let begun = "";
	/** Behind where an endless line was cut. */
	let skipping = false;

	function parsed(text: string, isEnd: boolean): readonly Row[] {
		let result = hasWildQuotes(text, separators) ? withoutQuotes.parse(text, 0, !isEnd) : parser.parse(text, 0, !isEnd);
		// Before the end a quotation mark may still be closed by what comes.
		const swallowed = isEnd ? result.errors.length > 0 : text.length - result.meta.cursor > longestRow;
		if (swallowed) result = withoutQuotes.parse(text, 0, !isEnd);
		begun = isEnd ? "" : text.slice(result.meta.cursor);
		if (begun.length <= longestRow) return result.data;
		const cut = begun.slice(0, longestRow).split(delimiter);
		begun = "";
		skipping = true;
		return [...result.data, cut];
	}

	return {
		push(piece) {
			const text = begun + piece;
			if (!skipping) return parsed(text, false);
			const end = text.indexOf(newline);
			// Half a line end may come with the next piece.
			begun = text.slice(1 - newline.length || text.length);
			if (end < 0) return [];
			skipping = false;
			return parsed(text.slice(end + newline.length), false);
		},
		end: () => (begun === "" || skipping ? [] : parsed(begun, true)),
	};
}

/** More quotation marks of this kind in one piece are no table. */
const mostWildQuotes = 100;

/** The parser looks through all that follows for each quotation mark with blanks and no separator behind it. */
function hasWildQuotes(text: string, { delimiter, newline }: Separators): boolean {
	let found = 0;
	for (let at = text.indexOf('" '); at >= 0; at = text.indexOf('" ', at)) {
		at++;
		while (text[at] === " ") at++;
		if (!text.startsWith(delimiter, at) && !text.startsWith(newline, at) && ++found > mostWildQuotes) return true;
	}
	return false;
}

export function newlineOf(text: string): Separators["newline"] {
	const found = /\r\n|\n|\r/.exec(text)?.[0];
	return found === "\r\n" || found === "\r" ? found : "\n";
}
