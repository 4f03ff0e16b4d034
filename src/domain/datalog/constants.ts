/** What counts as steady, warm and so on. "Common practice" marks the judgement of the trade without a single source. */
import type { Role } from "./role";

/** More columns than this no logger writes; each costs the time to find out what it is. */
export const mostColumns = 1_000;
/** Characters of a header that are looked at and shown. */
export const longestHeader = 100;
/** Characters of the longest field that may hold a number. */
export const longestNumber = 60;
/** No sensor shows more, and no clock: what lies beyond is a mark for a missing value, or would drown all others. */
export const largestNumber = 1e15;

/** Means are taken over this, s: short against how fast an engine warms, long against the beat of the closed loop. */
export const firstStepS = 0.5;
/** Steps kept at most; a longer log gets steps twice as long. */
export const mostSteps = 2 ** 19;
/** A pause in a recording longer than this is cut down to it, s. */
export const longestGapS = 30;
/** A value stands until the next one, but not longer, s: loggers ask some things less often (common practice). */
export const holdS = 5;
/** The same of the coolant, which changes slowly, s. */
export const coolantHoldS = 120;

/** From here on the engine is warm and runs in closed loop as it should, °C (common practice). */
export const warmC = 75;
/** Slower than this counts as idle or rolling to a stop, km/h; at idle the sums of trims are other ones (common practice). */
export const idleSpeed = 15;
/** The same by engine speed, where no vehicle speed is logged, rpm (common practice). */
export const idleRpm = 1200;

/** Driving is steady over at least this, s. */
export const windowS = 10;
/** Most that each may move within such a window (common practice). Fractions, kPa, km/h, rpm. */
export const steadyWithin: Partial<Record<Role, number>> = {
	throttle: 0.04,
	load: 0.1,
	manifold: 8,
	speed: 6,
	rpm: 250,
};
/** The trims are settled where their mean over `settlingS` moves by no more than this (common practice). */
export const settledWithin = 0.03;
export const settlingS = 5;
/** In closed loop lambda is 1, on the mean of a window, to within this (common practice). */
export const nearOne = 0.03;

/** Under load: at least this much of full load or throttle, or this pressure in the manifold, kPa (common practice). */
export const highLoad = 0.8;
export const highManifold = 95;
/** Commanded leaner than this the engine may still be in closed loop (common practice). */
export const richest = 0.97;
/** Left out at the beginning of a pull, until the exhaust has reached the sensor, s (common practice). */
export const delayS = 1;
/** A pull that lasts at least this after the delay counts, s. */
export const pullS = 1.5;
/** Short-term trims that move by more than this in a pull correct it. */
export const frozenWithin = 0.005;

/** Standard uncertainty of what a trim says about the fuel, of fuel demand (common practice): the blend model's own. */
export const modelSd = 0.03;
/** How far the stretches of one drive usually lie apart: every load and speed has its own error (common practice). */
export const usualSpread = 0.015;
/** How many stretches that expectation weighs as much as. */
export const spreadWeight = 3;
