/** The tank report as a drawing, for a picture file: heading, verdict, dots, and all its lines, on one long sheet. */
import type { ContentRange } from "../domain/quantity";
import { axisFor, type Side, stackedDots } from "./components/dotLayout";
import { dateTime, points } from "./format";
import { type Item, type Paper, type Picture, wrapped } from "./mixPicture";
import type { ReportTold } from "./reportTold";

const lineHeight = 1.35;

interface Drawn {
	/** Twenty equally likely contents. */
	readonly dots: readonly number[];
	readonly window: ContentRange | null;
}

const verdicts: Readonly<Record<Side, "inside" | "lean" | "knock">> = {
	inside: "inside",
	above: "lean",
	below: "knock",
};

export function reportPicture(told: ReportTold, drawn: Drawn, { width, text }: Paper): Picture {
	const margin = text * 1.5;
	const items: Item[] = [];
	let y = margin * 0.6;
	const write = (words: string, size: number, bold = false, x = margin) => {
		for (const line of wrapped(words, width - margin - x, bold ? size * 1.1 : size)) {
			y += size * lineHeight;
			items.push({ kind: "text", x, y, text: line, size, anchor: "start", bold });
		}
	};
	write(told.title, text * 1.35, true);
	write(told.made, text);
	y += text * 0.5;
	write(told.verdict.line, text * 1.6, true);
	write(told.verdict.more, text);
	y += text * 0.8;
	const plot = plotItems(drawn, { width, text }, margin, y);
	items.push(...plot.items);
	y = plot.bottom;
	for (const { title, facts = [], lines = [], entries = [], close } of told.sections) {
		y += text * 0.8;
		write(title, text * 1.15, true);
		for (const { term, is } of facts) write(`${term}: ${is}`, text);
		for (const line of lines) write(line, text);
		for (const { at, line, more } of entries) {
			y += text * 0.3;
			write(`${dateTime(at)}: ${line}`, text);
			for (const each of more) write(each, text, false, margin + text);
		}
		if (close) write(close, text);
	}
	y += text * 0.8;
	write(told.plain, text, true);
	return { width, height: y + margin, items };
}

function plotItems({ dots, window }: Drawn, { width, text }: Paper, margin: number, top: number) {
	const height = text * 8;
	const baseline = top + height + 6;
	const axis = axisFor(dots, window);
	const x = (content: number) => margin + ((content - axis.from) / (axis.to - axis.from)) * (width - 2 * margin);
	const { dots: placed, radius } = stackedDots(dots, window, x, height);
	const items: Item[] = [];
	if (window)
		items.push({ kind: "tint", x: x(window[0]), y: top, width: x(window[1]) - x(window[0]), height: height + 6 });
	for (const dot of placed)
		items.push({ kind: "mark", x: dot.x, y: baseline - dot.y, size: radius * 1.9, verdict: verdicts[dot.side] });
	items.push({ kind: "line", x1: margin, x2: width - margin, y1: baseline, y2: baseline, strong: true });
	for (let tick = axis.from; tick <= axis.to + 1e-9; tick += axis.step) {
		items.push({ kind: "line", x1: x(tick), x2: x(tick), y1: baseline, y2: baseline + 5, strong: true });
		const label = points(tick);
		items.push({
			kind: "text",
			x: x(tick),
			y: baseline + text * 1.5,
			text: label,
			size: text,
			anchor: "middle",
			bold: true,
		});
	}
	const bracket = baseline + text * 2;
	if (window)
		for (const [x1, y1, x2, y2] of [
			[x(window[0]), bracket, x(window[0]), bracket + 8],
			[x(window[0]), bracket + 8, x(window[1]), bracket + 8],
			[x(window[1]), bracket + 8, x(window[1]), bracket],
		])
			items.push({ kind: "line", x1, y1, x2, y2, strong: true });
	return { items, bottom: bracket + text };
}
