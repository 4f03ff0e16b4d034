/** All that a data log tells. */
import { type EthanolFound, reportedEthanol } from "./ethanolReading";
import type { Grid } from "./grid";
import { type Plot, plotOf } from "./plot";
import { inCoreUnit, type Spread, unitFor } from "./resolveUnit";
import { medianOf } from "./robust";
import { type Column, type Role, type Unit, unitsOf } from "./role";
import type { Reason } from "./steady";
import { type Stretch, steadyTrim, type TrimFound } from "./trimReading";
import { type Agreement, agreementOf, type LoadFound, underLoad } from "./underLoad";

export interface Finding {
	/** Length of the log without its pauses, s. */
	readonly seconds: number;
	/** Rows were averaged over this, s. */
	readonly stepS: number;
	/** Recordings that follow each other in the file. */
	readonly recordings: number;
	/** What the log holds, in which unit; `guessed` where only the values told the unit. */
	readonly columns: readonly { readonly role: Role; readonly unit: Unit; readonly guessed: boolean }[];
	/** Null where the log lacks the trims. */
	readonly steady: {
		readonly stretches: readonly Stretch[];
		readonly left: Readonly<Record<Reason, number>>;
		readonly found: TrimFound | null;
		readonly plot: Plot;
	} | null;
	/** Null where the log lacks one of the lambdas. */
	readonly load: { readonly corrected: number; readonly found: LoadFound | null; readonly agreement: Agreement } | null;
	readonly ethanol: EthanolFound | null;
}

/** More parts than a picture on a phone has pixels across are lost on it. */
const mostPlotted = 320;

/** `logged`: a grid in the units of the log; `named`: its columns, with units where the log names them. */
export function findingOf(logged: Grid, named: readonly Column[]): Finding {
	const present = named.flatMap(({ role, unit }) => {
		const mean = logged.means[role];
		return mean ? [{ role, unit, mean, spread: spreadOf(mean) }] : [];
	});
	const ofTrims = trimUnit(present.filter(({ role }) => isTrim(role)));
	const columns = present.map(({ role, unit, mean, spread }) => ({
		role,
		mean,
		unit: unit ?? (isTrim(role) ? ofTrims : unitFor(role, spread)),
		guessed: unit === null,
	}));
	const means = Object.fromEntries(
		columns.map(({ role, unit, mean }) => [role, mean.map((value) => inCoreUnit(value, unit))]),
	);
	const grid: Grid = { ...logged, means };
	const steady = steadyTrim(grid);
	const load = underLoad(grid);
	return {
		seconds: grid.steps * grid.stepS,
		stepS: grid.stepS,
		recordings: grid.recordings,
		columns: columns.map(({ role, unit, guessed }) => ({ role, unit, guessed })),
		steady: steady && {
			stretches: steady.stretches,
			left: steady.left,
			found: steady.found,
			plot: plotOf(steady.trims.both, grid, mostPlotted),
		},
		load: load && {
			corrected: load.corrected,
			found: load.found,
			agreement: load.found ? agreementOf(load.found, steady?.found ?? null) : "alone",
		},
		ethanol: reportedEthanol(grid),
	};
}

function isTrim(role: Role): boolean {
	return unitsOf[role] === unitsOf.short1;
}

/** One for all trims of a logger: what is learned may be so little that by itself it could be anything. */
function trimUnit(trims: readonly { readonly unit: Unit | null; readonly spread: Spread }[]): Unit {
	const named = trims.find(({ unit }) => unit !== null)?.unit;
	const [least, most] = [
		Math.min(...trims.map(({ spread }) => spread.least)),
		Math.max(...trims.map(({ spread }) => spread.most)),
	];
	return named ?? unitFor("short1", { least, most, median: 0 });
}

function spreadOf(mean: Float32Array): Spread {
	let least = Infinity;
	let most = -Infinity;
	for (const value of mean) {
		if (value < least) least = value;
		if (value > most) most = value;
	}
	return { least, most, median: medianOf(mean) };
}
