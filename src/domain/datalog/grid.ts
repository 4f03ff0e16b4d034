/** A log as means over equal steps of time: whatever the rate and however many rows, little is kept. */
import { coolantHoldS, firstStepS, holdS, longestGapS, mostSteps } from "./constants";
import type { Role } from "./role";

/** Means by role, NaN where nothing was logged. */
export interface Grid {
	/** Length of a step, s. */
	readonly stepS: number;
	readonly steps: number;
	readonly means: Partial<Record<Role, Float32Array>>;
	/** Recordings that follow each other in the file. */
	readonly recordings: number;
}

/** Whether a row was taken, or why not. */
export type Taken = "taken" | "noTime" | "backwards" | "noValues";

export interface GridBuilder {
	/** A row, its values by the order of roles; NaN where a field holds none. `atS` from any beginning. */
	add(atS: number, values: Float64Array): Taken;
	finish(): Grid;
}

/** A jump back by less than this is a stray row, by more another recording, s. */
const strayS = 1;
const dayS = 86_400;

/** `isClock`: the times are times of day, which begin anew at midnight. */
export function gridBuilder(roles: readonly Role[], isClock: boolean): GridBuilder {
	let stepS = firstStepS;
	let capacity = 4096;
	let sums = roles.map(() => new Float32Array(capacity));
	let counts = roles.map(() => new Uint32Array(capacity));
	let steps = 0;
	let recordings = 0;
	/** Of the last row: as logged, and on the grid. */
	let raw = Number.NaN;
	let at = 0;

	function move(next: number): boolean {
		let passed = next - raw;
		if (isClock && passed < -dayS / 2) passed += dayS;
		if (passed < 0 && passed > -strayS) return false;
		if (Number.isNaN(raw) || passed < 0) recordings++;
		if (!Number.isNaN(raw)) at += passed < 0 ? longestGapS : Math.min(passed, longestGapS);
		raw = next;
		return true;
	}
	function makeRoom(cell: number): number {
		if (cell < capacity) return cell;
		if (capacity < mostSteps) {
			capacity *= 2;
			sums = sums.map((column) => grown(column, new Float32Array(capacity)));
			counts = counts.map((column) => grown(column, new Uint32Array(capacity)));
			return makeRoom(cell);
		}
		for (const column of [...sums, ...counts]) halve(column);
		stepS *= 2;
		return makeRoom(Math.floor(at / stepS));
	}

	return {
		add(atS, values) {
			if (!Number.isFinite(atS)) return "noTime";
			if (values.every((value) => Number.isNaN(value))) return "noValues";
			if (!move(atS)) return "backwards";
			const cell = makeRoom(Math.floor(at / stepS));
			steps = cell + 1;
			for (let i = 0; i < values.length; i++) {
				if (Number.isNaN(values[i])) continue;
				sums[i][cell] += values[i];
				counts[i][cell]++;
			}
			return "taken";
		},
		finish() {
			const means: Partial<Record<Role, Float32Array>> = {};
			for (const [i, role] of roles.entries()) {
				const mean = new Float32Array(steps);
				for (let cell = 0; cell < steps; cell++) mean[cell] = sums[i][cell] / counts[i][cell];
				hold(mean, Math.round((role === "coolant" ? coolantHoldS : holdS) / stepS));
				means[role] = mean;
				// One column at a time: of a long log both together are too much.
				sums[i] = new Float32Array(0);
				counts[i] = new Uint32Array(0);
			}
			return { stepS, steps, means, recordings };
		},
	};
}

function grown<Column extends Float32Array | Uint32Array>(from: Column, to: Column): Column {
	to.set(from);
	return to;
}

/** Adds up neighbours into the first half. */
function halve(column: Float32Array | Uint32Array): void {
	const half = column.length / 2;
	for (let i = 0; i < half; i++) column[i] = column[2 * i] + column[2 * i + 1];
	column.fill(0, half);
}

/** Lets each value stand for so many empty steps after it. */
function hold(mean: Float32Array, longest: number): void {
	let last = -Infinity;
	for (let i = 0; i < mean.length; i++) {
		if (!Number.isNaN(mean[i])) last = i;
		else if (i - last <= longest) mean[i] = mean[last];
	}
}
