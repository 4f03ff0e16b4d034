/**
 * Raised whenever the same log gives other numbers than before: old checkpoints are then worth nothing. 2: odometers count, in
 * logs that have them; 3: baselines of trims, in logs that have them. All others give the same numbers as under 1.
 */
export const modelVersion = 3;
