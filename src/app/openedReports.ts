/** Reports that are open: one row a car, and how what a report says stands against its own entries. */
import type { Glance } from "../keeper/glance";
import type { ReportRead } from "../keeper/reports";

/** Where the text is: a file is read again when it is needed, so that many large ones need no memory. */
export type Source = { readonly name: string } & ({ readonly file: File } | { readonly text: string });

/** `waiting`: not held against its entries yet. */
export type Check = "waiting" | "confirmed" | "differs" | "otherModel" | Unchecked | "plain";

/** Why it can't be told what the entries come to: beyond all measure, the check broke off, or the file is no longer there. */
export type Unchecked = "tooLong" | "failed" | "gone";

export interface OpenedReport {
	readonly source: Source;
	readonly read: ReportRead;
	/** What the row shows. */
	readonly glance: Glance;
	readonly check: Check;
	/** Reports of this car that were opened. */
	readonly count: number;
	readonly kept: boolean;
}

/** Of two reports of a car the one made later is shown; a plain log says nothing of when. */
export function withReport(open: readonly OpenedReport[], source: Source, read: ReportRead): OpenedReport[] {
	const before = open.find(({ glance }) => glance.carId === read.glance.carId);
	const fresh: OpenedReport = { source, read, glance: read.glance, check: "waiting", count: 1, kept: false };
	if (!before) return [...open, fresh];
	const later = madeAt(read) >= madeAt(before.read) ? fresh : before;
	return open.map((each) => (each === before ? { ...later, count: before.count + 1 } : each));
}

function madeAt({ made }: ReportRead): number {
	return made ? Date.parse(made.at) : 0;
}

/** With what its entries come to. */
export function checkedReport(opened: OpenedReport, found: Glance | Unchecked): OpenedReport {
	if (typeof found === "string") return { ...opened, check: found };
	const { made, glance } = opened.read;
	const check = !made ? "plain" : agree(glance, found) ? "confirmed" : made.otherModel ? "otherModel" : "differs";
	return { ...opened, glance: found, check };
}

/** Half a point, less than any screen shows. */
const noticeable = 0.005;

function agree(said: Glance, found: Glance): boolean {
	const [a, b] = [said.figures, found.figures];
	if (!a || !b) return a === b;
	const near = (one: number | null, other: number | null) =>
		one === null || other === null ? one === other : Math.abs(one - other) <= noticeable;
	return (
		near(a.median, b.median) &&
		near(a.low, b.low) &&
		near(a.high, b.high) &&
		near(a.below, b.below) &&
		near(a.above, b.above) &&
		said.grave === found.grave &&
		said.surprise?.kind === found.surprise?.kind &&
		said.lastAt === found.lastAt &&
		said.calibration?.id === found.calibration?.id
	);
}
