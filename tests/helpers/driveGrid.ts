/** Made-up drives as the means that a reading is taken from, in the core's units. */
import { type Grid, gridBuilder } from "../../src/domain/datalog/grid";
import type { Role } from "../../src/domain/datalog/role";
import { type Drive, type DriveRow, driven } from "./drive";

const values: Partial<Record<Role, (row: DriveRow) => number>> = {
	rpm: ({ rpm }) => rpm,
	speed: ({ speed }) => speed,
	coolant: ({ coolant }) => coolant,
	throttle: ({ throttle }) => throttle,
	load: ({ load }) => load,
	manifold: ({ manifold }) => manifold,
	short1: ({ short }) => short[0],
	long1: ({ long }) => long[0],
	short2: ({ short }) => short[1],
	long2: ({ long }) => long[1],
	lambda: ({ lambda }) => lambda,
	commanded: ({ commanded }) => commanded,
	fuelSystem: ({ closed }) => (closed ? 1 : 0),
	ethanol: ({ ethanol }) => ethanol,
};

/** What a plain logger records. */
export const plain: readonly Role[] = ["rpm", "speed", "coolant", "throttle", "load", "short1", "long1"];

export function gridOf(drive: Drive, roles: readonly Role[] = plain): Grid {
	const builder = gridBuilder(roles, false);
	for (const row of driven(drive)) {
		builder.add(
			row.time,
			Float64Array.from(roles, (role) => values[role]?.(row) ?? Number.NaN),
		);
	}
	return builder.finish();
}

/** A grid of columns made by hand, half a second a step. */
export function gridWith(means: Partial<Record<Role, readonly number[]>>, stepS = 0.5): Grid {
	const columns = Object.entries(means).map(([role, mean]) => [role, Float32Array.from(mean)]);
	return { stepS, steps: Object.values(means)[0].length, recordings: 1, means: Object.fromEntries(columns) };
}
