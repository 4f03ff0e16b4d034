/** Scales, steps and thinning for the chart over time. */
import { dates } from "../formatters";

/** Values that each hold from their instant to the next one's. */
export interface Step {
	readonly at: number;
	readonly low: number;
	readonly median: number;
	readonly high: number;
}

/** A linear scale from one stretch to another. */
export function scale(from: number, to: number, start: number, end: number): (value: number) => number {
	return (value) => start + ((value - from) / (to - from)) * (end - start);
}

/**
 * Not more than so many of the steps. Of every slice of time the last stays and those that reach furthest, so that no peak
 * is lost and the ends are where they were.
 */
export function thinned<T extends Step>(steps: readonly T[], most: number): readonly T[] {
	if (steps.length <= most) return steps;
	const first = steps[0].at;
	const last = steps[steps.length - 1].at;
	for (let slices = Math.floor(most / 2); slices > 1; slices = Math.floor(slices * 0.9)) {
		const kept = new Set<T>([steps[0]]);
		let slice: T[] = [];
		let end = first + (last - first) / slices;
		for (const step of steps) {
			if (step.at > end && step.at < last) {
				for (const telling of tellingOf(slice)) kept.add(telling);
				slice = [];
				while (step.at > end) end += (last - first) / slices;
			}
			slice.push(step);
		}
		for (const telling of tellingOf(slice)) kept.add(telling);
		if (kept.size <= most) return steps.filter((step) => kept.has(step));
	}
	return [...new Set([steps[0], ...tellingOf(steps)])].sort((a, b) => a.at - b.at);
}

/** The steps that reach furthest up and down, and the last. */
function tellingOf<T extends Step>(steps: readonly T[]): T[] {
	if (steps.length === 0) return [];
	const furthest = (reach: (step: T) => number) =>
		steps.reduce((best, step) => (reach(step) > reach(best) ? step : best));
	return [
		furthest(({ high }) => high),
		furthest(({ median }) => median),
		furthest(({ median }) => -median),
		furthest(({ low }) => -low),
		steps[steps.length - 1],
	];
}

/** A line that keeps each value until the next, and the last until `end`. */
export function stepPath(
	steps: readonly { readonly at: number; readonly y: number }[],
	x: (at: number) => number,
	end: number,
): string {
	if (steps.length === 0) return "";
	const parts = steps.map(({ at, y }, i) =>
		i === 0 ? `M${tenth(x(at))} ${tenth(y)}` : `H${tenth(x(at))}V${tenth(y)}`,
	);
	return `${parts.join("")}H${tenth(x(end))}`;
}

/** The area between two such lines. */
export function bandPath(
	steps: readonly { readonly at: number; readonly low: number; readonly high: number }[],
	x: (at: number) => number,
	end: number,
): string {
	if (steps.length === 0) return "";
	const back = steps
		.map(({ low }, i) => `V${tenth(low)}H${tenth(x(steps[i].at))}`)
		.reverse()
		.join("");
	return `${stepPath(
		steps.map(({ at, high }) => ({ at, y: high })),
		x,
		end,
	)}${back}Z`;
}

function tenth(value: number): number {
	return Math.round(value * 10) / 10;
}

/** The multiples of an axis' step, not more than so many. */
export function contentTicks(
	axis: { readonly from: number; readonly to: number; readonly step: number },
	most: number,
): number[] {
	const from = Math.round(axis.from * 100);
	const to = Math.round(axis.to * 100);
	const base = Math.round(axis.step * 100);
	const step = [base, 10, 20, 50].find((each) => each >= base && (to - from) / each + 1 <= most) ?? 100;
	const ticks: number[] = [];
	for (let tick = Math.ceil(from / step) * step; tick <= to; tick += step) ticks.push(tick / 100);
	return ticks;
}

export interface TimeTick {
	readonly at: number;
	readonly label: string;
}

const days = [1, 2, 4, 7, 14];
const months = [1, 2, 3, 6, 12, 24, 60, 120];

/** Beginnings of days or months of the device's calendar, as close together as their labels leave each other room. */
export function timeTicks(
	from: number,
	to: number,
	x: (at: number) => number,
	widthOf: (label: string) => number,
): TimeTick[] {
	const steps = [
		...days.map((count) => ({ count, inDays: true })),
		...months.map((count) => ({ count, inDays: false })),
	];
	let last: TimeTick | undefined;
	for (const { count, inDays } of steps) {
		// So many ticks fit on no screen, and need not be made.
		if ((to - from) / 86_400_000 > 40 * count * (inDays ? 1 : 30)) continue;
		const starts = inDays ? dayStarts(from, to, count) : monthStarts(from, to, count);
		const ticks = starts.map((at, i) => ({
			at,
			label: (inDays ? dayAndMonth : count >= 12 ? year : yearDiffers(at, starts[i - 1]) ? monthAndYear : month).format(
				at,
			),
		}));
		const fits = ticks.every(
			({ at, label }, i) =>
				i === 0 || x(at) - x(ticks[i - 1].at) >= (widthOf(label) + widthOf(ticks[i - 1].label)) / 2 + labelGap,
		);
		if (ticks.length > 0 && fits) return ticks;
		last = ticks.at(-1) ?? last;
	}
	return last ? [last] : [];
}

const labelGap = 10;
const dayAndMonth = dates({ day: "numeric", month: "short" });
const month = dates({ month: "short" });
const monthAndYear = dates({ month: "short", year: "numeric" });
const year = dates({ year: "numeric" });

function yearDiffers(at: number, before: number | undefined): boolean {
	return before === undefined || new Date(at).getFullYear() !== new Date(before).getFullYear();
}

function dayStarts(from: number, to: number, count: number): number[] {
	const date = new Date(from);
	date.setHours(0, 0, 0, 0);
	const starts: number[] = [];
	for (; date.getTime() <= to; date.setDate(date.getDate() + count)) {
		if (date.getTime() < from) date.setDate(date.getDate() + 1);
		if (date.getTime() >= from && date.getTime() <= to) starts.push(date.getTime());
	}
	return starts;
}

function monthStarts(from: number, to: number, count: number): number[] {
	const start = new Date(from);
	const starts: number[] = [];
	// Counted from year 0, so that quarters and decades begin where people expect them.
	for (let month = Math.floor((start.getFullYear() * 12 + start.getMonth()) / count) * count; ; month += count) {
		const at = new Date(Math.floor(month / 12), month % 12, 1).getTime();
		if (at > to) return starts;
		if (at >= from) starts.push(at);
	}
}
