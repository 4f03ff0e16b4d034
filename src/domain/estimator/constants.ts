/** The numbers of the blend model. "Common practice" marks engineering judgement without a single source. */

/** Spread of the fuel gauge's bias, fraction of capacity (common practice). */
export const gaugeBiasSd = 0.03;
/** Spread of the true capacity relative to the rated one (common practice). */
export const capacityFactorSd = 0.015;
/** Standard uncertainty of a gauge reading, fraction of capacity (common practice). */
export const defaultGaugeSd = 0.05;
/** Standard uncertainty of the level at the first click, fraction of capacity (common practice). */
export const defaultClickSd = 0.02;
/** No tank holds more than this multiple of its true capacity (common practice). */
export const overfillLimit = 1.08;
/** Relative spread of displayed litres: NIST Handbook 44, section 3.30, maintenance tolerance 0.5 % as two sd. */
export const dispenserSd = 0.0025;
/** Contents of a tank nobody can vouch for: nothing sold for cars with flex-fuel labels in use holds more (common practice). */
export const unknownContents = [0, 0.85] as const;

/** Fuel burned, L of pure gasoline per km: median of what cars need, and spread of its logarithm (common practice). */
export const usualConsumption = 0.09;
export const consumptionLogSd = 0.4;
/** Change of the car's consumption from one measured leg to the next, driver and season, relative (common practice). */
export const consumptionDriftSd = 0.03;
/** Spread of what one leg burns around that, town or motorway, relative (common practice). */
export const legSpread = 0.12;

/** Drift of an area's level, share of the product's range per square root of a day (common practice). */
export const areaDriftPerRootDay = 0.01;
/** Spread of a place's offset, share of the product's range (common practice; SAE 2013-01-9071: 88 to 95 % in range). */
export const placeSpread = 1 / 8;
/** Days in which a place's offset is forgotten by a factor e (common practice). */
export const placeMemoryDays = 45;

/** Days in which a trim's baseline is forgotten by a factor e: engines age, seasons change (common practice). */
export const baselineMemoryDays = 365;

/** Chance that a reading of the content says nothing at all (common practice). */
export const rubbishChance = 0.02;
/** A reading less likely than this is called out by name. */
export const disagreementChance = 0.01;

/**
 * What is said of the level cannot be if less than this share of the sample explains it (common practice): a fill that was
 * not entered, a nozzle that clicked early. Of ten thousand simulated fills the hardest left nine times as much. A distance
 * cannot be if it makes all else that is said of the level less likely by this factor.
 */
export const leastExplained = 0.002;

/** "Within three sd" of the lawful range. */
export const lawfulSds = 3;
