/**
 * The oracle's knowledge of baselines. A trim that states a baselineSd is K(E)/K(E₀)·(1 + b) − 1, b being the car's baseline on
 * that calibration, normal around nothing with that sd, give or take what is left of its variance. Between readings Δ days apart the
 * baseline moves by b' = φb + √(1−φ²)·sd·n, φ = exp(−Δ/365). The first sd that is stated holds.
 */
import type { ReadingEvent } from "../../src/domain/event";

type Column = Float64Array;

interface Known {
	readonly b: Column;
	readonly sd: number;
	at: number;
}

export function baselinesOf(
	n: number,
	normal: () => number,
	fuelDemand: (content: number) => number,
	robustDensity: (value: number, truth: number, sd: number) => number,
) {
	const known = new Map<number, Known>();

	/** Weighs every sample by a trim that states a baselineSd, at a time in ms; false: the reading is something else. */
	function heeded(
		event: ReadingEvent,
		now: number,
		E: Column,
		weigh: (likelihood: (i: number) => number) => void,
	): boolean {
		if (event.of !== "trim" || event.baselineSd === undefined) return false;
		const { calibratedFor, value, sd, baselineSd } = event;
		const own = Math.sqrt(sd ** 2 - baselineSd ** 2);
		const { b } = at(calibratedFor, baselineSd, now);
		const assumed = fuelDemand(calibratedFor);
		weigh((i) => robustDensity(value, (fuelDemand(E[i]) / assumed) * (1 + b[i]) - 1, own));
		return true;
	}

	/** The baseline of a calibration, brought forward to now. */
	function at(calibratedFor: number, baselineSd: number, now: number): Known {
		const before = known.get(calibratedFor);
		if (before === undefined) {
			const b = new Float64Array(n);
			for (let i = 0; i < n; i++) b[i] = baselineSd * normal();
			const first = { b, sd: baselineSd, at: now };
			known.set(calibratedFor, first);
			return first;
		}
		const phi = Math.exp(-(now - before.at) / 86_400_000 / 365);
		const fresh = before.sd * Math.sqrt(1 - phi * phi);
		for (let i = 0; i < n; i++) before.b[i] = phi * before.b[i] + fresh * normal();
		before.at = now;
		return before;
	}

	return { heeded, columns: () => [...known.values()].map(({ b }) => b) };
}
