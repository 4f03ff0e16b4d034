/**
 * When the tank's blend reaches the engine: the old fuel in line, filter and rail is burned first, and the tank mixes by
 * its pump's return flow and the driving. Common practice; no measured number is public.
 */

/** Fuel between tank and injectors, L. */
export const lineVolumeL = [0.3, 1] as const;
/** Distance that takes, km, at 10 L/100 km. */
export const lineDistanceKm = [3, 10] as const;
/** Driving until the tank is mixed, minutes; tanks with two lobes take longer. */
export const mixingMinutes = [5, 10] as const;
