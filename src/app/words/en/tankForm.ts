/** The tank's capacity and the unit of all volumes. */
import type { VolumeUnit } from "../../../domain/units";

export const words = {
	countIn: "You count fuel in",
	units: { L: "Litres", gal: "US gallons", "imp gal": "Imperial gallons" } satisfies Record<VolumeUnit, string>,
	capacity: (unit: VolumeUnit) => `Tank capacity, ${unit}`,
	hint: "The owner’s manual has it. How far a fill moves the blend hangs on what the tank held before.",
	unknown: "I don’t know the capacity",
	assumed: (volume: string) =>
		`Then ${volume} are assumed, and the account leans less on the gauge and on the nozzle’s click until you enter the capacity.`,
};

export type Words = typeof words;
