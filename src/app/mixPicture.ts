/** The table of mixes as a drawing: laid out once, drawn on the screen, on paper and on a canvas. */
import type { MixCell, MixTable, MixVerdict } from "../domain/plan/mixTable";
import { fromLitres, litresPer, type VolumeUnit } from "../domain/units";
import { cellWords } from "./mixWords";
import { locale } from "./words/language";
import { mixesWords } from "./words/mixes";

export type Item =
	| {
			readonly kind: "text";
			readonly x: number;
			/** Of the baseline. */
			readonly y: number;
			readonly text: string;
			readonly size: number;
			readonly anchor: "start" | "middle" | "end";
			readonly bold: boolean;
	  }
	| {
			readonly kind: "mark";
			readonly x: number;
			readonly y: number;
			readonly size: number;
			readonly verdict: MixVerdict;
	  }
	| {
			readonly kind: "tint";
			readonly x: number;
			readonly y: number;
			readonly width: number;
			readonly height: number;
	  }
	| {
			readonly kind: "line";
			readonly x1: number;
			readonly y1: number;
			readonly x2: number;
			readonly y2: number;
			readonly strong: boolean;
	  };

export interface Picture {
	readonly width: number;
	readonly height: number;
	/** In the order of drawing. */
	readonly items: readonly Item[];
}

export interface Paper {
	readonly width: number;
	/** Size of the letters, in the same unit. */
	readonly text: number;
}

interface Told {
	readonly table: MixTable;
	readonly names: readonly [string, string];
	readonly unit: VolumeUnit;
}

/** Circle inside, triangles that point the way the content is off; for a square of 16 around nothing. */
export const markPaths: Readonly<Record<MixVerdict, string>> = {
	inside: "M-7 0a7 7 0 1 0 14 0a7 7 0 1 0 -14 0Z",
	lean: "M-8 6.5H8L0 -8Z",
	knock: "M-8 -6.5H8L0 8Z",
};

/** A letter's width, share of its height, on the wide side. */
const letter = 0.58;
const lineHeight = 1.35;

/** Below this chance of going in, what goes in of the second fuel is nothing to go by. */
const mostlyFits = 0.5;

/** The grid alone, with as many of its columns as there is room for; wider than the paper where not even two fit. */
export function gridPicture(told: Told, paper: Paper, top = 0): Picture {
	const { table, names, unit } = told;
	const { text } = paper;
	const words = mixesWords();
	const amount = new Intl.NumberFormat(locale, { maximumFractionDigits: 2 });
	const shown = (litres: number) => amount.format(fromLitres(litres, unit));
	const [tints, items]: [Item[], Item[]] = [[], []];
	const write = (x: number, y: number, said: string, anchor: "start" | "middle" | "end", bold = false) => {
		items.push({ kind: "text", x, y, text: said, size: text, anchor, bold });
	};

	const head = Math.max(...table.rows.map(({ first }) => shown(first).length)) * text * letter + text;
	const cell = text * letter * 6.1 + 3;
	const columns = chosenColumns(table.grid.second.length, Math.max(1, Math.floor((paper.width - head) / cell) - 1));
	const width = Math.max(paper.width, head + cell * (columns.length + 1));
	const pitch = (width - head) / (columns.length + 1);
	const middle = (column: number) => head + pitch * (column + 0.5);

	let y = top;
	const titles = [words.rows(unit, names[0]), words.columns(unit, names[1])];
	for (const line of titles.flatMap((title) => wrapped(title, width, text * 1.1))) {
		y += text * lineHeight;
		write(0, y, line, "start", true);
	}
	y += text * 0.4;
	const headTop = y;
	y += text * 1.2;
	for (const [i, column] of columns.entries()) write(middle(i), y, shown(table.grid.second[column]), "middle", true);
	write(middle(columns.length), y, words.click, "middle", true);
	y += text * 0.6;
	items.push({ kind: "line", x1: 0, x2: width, y1: y, y2: y, strong: true });

	const height = text * 2.9;
	for (const row of table.rows) {
		write(head - text * 0.6, y + height / 2 + text * 0.35, shown(row.first), "end", true);
		const cells: readonly MixCell[] = [...columns.map((column) => row.cells[column]), row.toClick];
		cells.forEach((each, i) => {
			const x = middle(i);
			const verdict = each.mix?.judged?.verdict;
			if (verdict === "inside")
				tints.push({ kind: "tint", x: x - pitch / 2 + 1, y: y + 1, width: pitch - 2, height: height - 2 });
			const isClick = each === row.toClick && each.mix !== null && each.fits >= mostlyFits;
			if (verdict)
				items.push({ kind: "mark", x: isClick ? x - text * 1.2 : x, y: y + text * 0.85, size: text, verdict });
			if (isClick) {
				const rest = `+${shown(rounded(row.toClick.litres, unit))}`;
				write(verdict ? x - text * 0.5 : x, y + text * 1.2, rest, verdict ? "start" : "middle");
			}
			write(x, y + (each.mix ? text * 2.4 : height / 2 + text * 0.35), cellWords(each), "middle", verdict === "inside");
		});
		y += height;
		items.push({ kind: "line", x1: 0, x2: width, y1: y, y2: y, strong: false });
	}
	items.push({ kind: "line", x1: width - pitch, x2: width - pitch, y1: headTop, y2: y, strong: true });
	return { width, height: y + 2, items: [...tints, ...items] };
}

/** The sheet that is shared or printed: heading, what is assumed, the grid, the signs and the caution. */
export function sheetPicture(told: Told, heading: string, lines: readonly string[], paper: Paper): Picture {
	const { width, text } = paper;
	const margin = text * 1.5;
	const inner = width - 2 * margin;
	const items: Item[] = [];
	let y = margin * 0.6;
	const write = (words: string, size: number, bold: boolean, x = margin) => {
		for (const line of wrapped(words, width - margin - x, bold ? size * 1.1 : size)) {
			y += size * lineHeight;
			items.push({ kind: "text", x, y, text: line, size, anchor: "start", bold });
		}
	};
	write(heading, text * 1.35, true);
	y += text * 0.3;
	for (const line of lines) write(line, text, false);
	y += text * 0.6;
	const grid = gridPicture(told, { width: inner, text }, y);
	items.push(...grid.items.map((item) => moved(item, margin)));
	y = grid.height + text * 0.6;
	const { verdicts, notes, caution } = mixesWords();
	for (const verdict of told.table.rows.some(judged) ? signs : []) {
		items.push({ kind: "mark", x: margin + text * 0.6, y: y + text, size: text, verdict });
		write(verdicts[verdict], text, false, margin + text * 1.8);
	}
	write(notes, text, false);
	y += text * 0.3;
	write(caution, text, true);
	return { width, height: y + margin, items };
}

export const signs: readonly MixVerdict[] = ["inside", "lean", "knock"];

export function judged({ cells, toClick }: MixTable["rows"][number]): boolean {
	return [...cells, toClick].some(({ mix }) => mix?.judged);
}

/** What goes in to the click, L: in whole units, halves of few gallons. Nobody knows it closer. */
function rounded(litres: number, unit: VolumeUnit): number {
	const step = unit === "L" || litres >= 10 * litresPer[unit] ? litresPer[unit] : litresPer[unit] / 2;
	return Math.round(litres / step) * step;
}

/** So many of a row of columns: the first ones, for large amounts of both fit least; every other one where few fit. */
function chosenColumns(count: number, most: number): number[] {
	const every = most * 2 >= count ? 1 : Math.ceil(count / most);
	const columns = Array.from({ length: Math.ceil(count / every) }, (_, i) => i * every);
	return columns.slice(0, most);
}

/** Lines that fit a width, broken at spaces. */
export function wrapped(words: string, width: number, size: number): string[] {
	const most = Math.max(8, Math.floor(width / (size * letter * 0.92)));
	const lines: string[] = [];
	for (const word of words.split(" ")) {
		const last = lines.at(-1);
		if (last !== undefined && last.length + 1 + word.length <= most) lines[lines.length - 1] = `${last} ${word}`;
		else lines.push(word);
	}
	return lines;
}

function moved(item: Item, right: number): Item {
	return item.kind === "line" ? { ...item, x1: item.x1 + right, x2: item.x2 + right } : { ...item, x: item.x + right };
}
