/**
 * Text into rows of fields, piece by piece (RFC 4180, and what loggers make of it). Whatever the text, every character is
 * looked at a few times at most, and no more than a row and a piece are held.
 */
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

export function rowReader({ delimiter, newline }: Separators): RowReader {
	let begun = "";
	/** How much of what is begun is to be read without quotation marks, because one was not closed. */
	let plainUntil = 0;
	/** Behind where a line was cut. */
	let skipping = false;

	function read(text: string, isEnd: boolean): readonly Row[] {
		const rows: Row[] = [];
		let at = 0;
		for (;;) {
			const lineEnd = text.indexOf(newline, at);
			if (skipping) {
				if (lineEnd < 0) return rest("", 0, rows);
				skipping = false;
				at = lineEnd + newline.length;
				continue;
			}
			const end = lineEnd >= 0 ? lineEnd : text.length;
			const isWhole = lineEnd >= 0 || (isEnd && at < end);
			if (end - at > longestRow) {
				rows.push(text.slice(at, at + longestRow).split(delimiter));
				skipping = !isWhole;
			} else {
				const line = text.slice(at, end);
				const quoted = at < plainUntil || !line.includes('"') ? null : quotedRow(text, at, isEnd);
				if (quoted?.is === "row") {
					rows.push(quoted.row);
					at = quoted.next;
					continue;
				}
				if (quoted?.is === "begun" || !isWhole) return rest(text, at, rows);
				if (quoted?.is === "unclosed") plainUntil = quoted.until;
				rows.push(line.split(delimiter));
			}
			if (lineEnd < 0) return rest("", 0, rows);
			at = lineEnd + newline.length;
		}
	}

	function rest(text: string, from: number, rows: readonly Row[]): readonly Row[] {
		begun = text.slice(from);
		plainUntil = Math.max(0, plainUntil - from);
		return rows;
	}

	/** A row with quotation marks in it, which may run over several lines. */
	function quotedRow(text: string, start: number, isEnd: boolean): Quoted {
		const limit = Math.min(text.length, start + longestRow);
		const cut: Quoted = !isEnd && limit === text.length ? { is: "begun" } : { is: "unclosed", until: limit };
		const row: string[] = [];
		for (let at = start; ; ) {
			let until = at;
			if (text[at] === '"') {
				const closing = closingQuote(text, at, limit, isEnd);
				if (closing === null) return cut;
				row.push(text.slice(at + 1, closing).replaceAll('""', '"'));
				until = afterBlanks(text, closing + 1, limit);
			} else {
				while (until < limit && !text.startsWith(delimiter, until) && !text.startsWith(newline, until)) until++;
				row.push(text.slice(at, until));
			}
			if (text.startsWith(delimiter, until)) at = until + delimiter.length;
			else if (text.startsWith(newline, until)) return { is: "row", row, next: until + newline.length };
			else return isEnd && until === text.length ? { is: "row", row, next: text.length } : cut;
		}
	}

	/** The mark that ends the field which begins with one at `open`: before a separator, or the end. Null where none does. */
	function closingQuote(text: string, open: number, limit: number, isEnd: boolean): number | null {
		for (let at = text.indexOf('"', open + 1); at >= 0 && at < limit; at = text.indexOf('"', at + 1)) {
			if (text[at + 1] === '"') {
				at++;
				continue;
			}
			const next = afterBlanks(text, at + 1, limit);
			if (next === text.length && !isEnd) return null;
			if (next === text.length || text.startsWith(delimiter, next) || text.startsWith(newline, next)) return at;
			at = next - 1;
		}
		return null;
	}

	function afterBlanks(text: string, start: number, limit: number): number {
		let at = start;
		while (at < limit && text[at] === " ") at++;
		return at;
	}

	return {
		push: (piece) => read(begun + piece, false),
		end: () => (begun === "" ? [] : read(begun, true)),
	};
}

/** A row; or one that is not complete yet; or a quotation mark that is not closed before `until`. */
type Quoted =
	| { readonly is: "row"; readonly row: Row; readonly next: number }
	| { readonly is: "begun" }
	| { readonly is: "unclosed"; readonly until: number };

export function newlineOf(text: string): Separators["newline"] {
	const found = /\r\n|\n|\r/.exec(text)?.[0];
	return found === "\r\n" || found === "\r" ? found : "\n";
}
