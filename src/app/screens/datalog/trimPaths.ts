/** Lines and areas of the drawing of trims; what is not logged is left open. */
import type { Plot } from "../../../domain/datalog/plot";
import type { Stretch } from "../../../domain/datalog/trimReading";

type Scale = (value: number) => number;
interface Ends {
	readonly from: number;
	readonly to: number;
}

export function lineOf({ mean, seconds }: Plot, x: Scale, y: Scale, axis: Ends): string {
	let path = "";
	let open = false;
	for (let i = 0; i < mean.length; i++) {
		const known = !Number.isNaN(mean[i]);
		if (known) path += `${open ? "L" : "M"}${point(x(((i + 0.5) * seconds) / mean.length), y(within(mean[i], axis)))}`;
		open = known;
	}
	return path;
}

export function bandOf({ low, high, mean, seconds }: Plot, x: Scale, y: Scale, axis: Ends): string {
	const at = (i: number) => x(((i + 0.5) * seconds) / mean.length);
	let path = "";
	for (let from = 0; from < mean.length; from++) {
		if (Number.isNaN(mean[from])) continue;
		let to = from;
		while (to + 1 < mean.length && !Number.isNaN(mean[to + 1])) to++;
		for (let i = from; i <= to; i++) path += `${i === from ? "M" : "L"}${point(at(i), y(within(high[i], axis)))}`;
		for (let i = to; i >= from; i--) path += `L${point(at(i), y(within(low[i], axis)))}`;
		path += "Z";
		from = to;
	}
	return path;
}

/** The stretches on the drawing; those that touch there are one, and none is thinner than a line. */
export function mergedSpans(stretches: readonly Stretch[], x: Scale): readonly { from: number; to: number }[] {
	const merged: { from: number; to: number }[] = [];
	for (const { fromS, toS } of stretches) {
		const from = Math.round(x(fromS));
		const to = Math.max(from + 1, Math.round(x(toS)));
		const last = merged.at(-1);
		if (last && from <= last.to) last.to = Math.max(last.to, to);
		else merged.push({ from, to });
	}
	return merged;
}

/** Upright bars over the spans, between two heights. */
export function barsOf(spans: readonly { readonly from: number; readonly to: number }[], top: number, bottom: number) {
	return spans.map(({ from, to }) => `M${from} ${top}H${to}V${bottom}H${from}Z`).join("");
}

function within(value: number, { from, to }: Ends): number {
	return Math.max(from, Math.min(to, value));
}

function point(x: number, y: number): string {
	return `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;
}
