/** The keeping of a card: as one more calibration of a car, or in the form of a car that is still to be set up. */
import type { Calibration, Car } from "../domain/vehicle";
import { mostCalibrations } from "../store/limits";
import { flashEvent } from "./calibrations";
import type { Model } from "./model";
import { emptySetup, readSetup } from "./setupForm";

interface Keeping {
	readonly calibration: Calibration;
	readonly flashed: boolean;
	/** Its leanest lambda goes to the car's fuel system, too. */
	readonly lambda: boolean;
	readonly now: number;
}

/** Whether it is on the disk; `full`: the car can take no more; `notFlashed`: it is there, and that it is flashed is not. */
export async function keepForCar(
	model: Model,
	car: Car,
	{ calibration, flashed, lambda, now }: Keeping,
): Promise<boolean | "full" | "notFlashed"> {
	const others = car.calibrations.filter(({ id }) => id !== calibration.id);
	if (others.length >= mostCalibrations) return "full";
	const { leanestLambda } = calibration;
	const fuelSystem = lambda && leanestLambda !== undefined ? { fuelSystem: { ...car.fuelSystem, leanestLambda } } : {};
	// Where it is there already, from a try that broke off, only the rest is to be done.
	const isThere = others.length < car.calibrations.length;
	const saved = { ...car, ...fuelSystem, calibrations: [...others, calibration] };
	if (!(isThere && !lambda) && !(await model.saveCar(saved))) return false;
	if (!flashed) return true;
	const flash = flashEvent(model.newId(), calibration.id, model.state().events ?? [], now);
	return (await model.appendTo(car.id, [flash])) || "notFlashed";
}

/** The form of the first car, with the card in it. */
export async function keepForSetup(model: Model, card: Calibration): Promise<boolean> {
	const empty = emptySetup(model.newId(), navigator.language === "en-US" ? "gal" : "L");
	const form = readSetup(await model.draft("setup"), empty) ?? empty;
	return (await model.saveDraft("setup", { ...form, hasCalibration: "yes", card })) !== null;
}
