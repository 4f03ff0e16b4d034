/** The tank as a person types it. */
import { litres } from "../domain/quantity";
import { err, ok, type Result } from "../domain/result";
import { fromLitres, toLitres, type VolumeUnit } from "../domain/units";
import type { Tank } from "../domain/vehicle";
import { volume } from "./format";
import { readNumber } from "./numberWords";
import { typedNumber } from "./typedNumber";
import { numbersWords } from "./words/numbers";

export interface TankForm {
	readonly capacity: string;
	readonly unit: VolumeUnit;
	/** "I don't know". */
	readonly capacityUnknown: boolean;
}

/** Where nobody knows the capacity: a large tank, and the gauge and the click believed little (common practice). */
export const unknownTank: Tank = { capacityL: litres(80), gaugeSd: 0.15, clickSd: 0.25 };

/** What a car's tank holds, L. Wide enough for any; a litre number taken for gallons mostly lies outside. */
const [least, most] = [5, 200];

function isUnknown(tank: Tank): boolean {
	const { capacityL, gaugeSd, clickSd } = unknownTank;
	return tank.capacityL === capacityL && tank.gaugeSd === gaugeSd && tank.clickSd === clickSd;
}

export function tankFormOf(tank: Tank, unit: VolumeUnit): TankForm {
	const capacityUnknown = isUnknown(tank);
	return { capacity: capacityUnknown ? "" : typedVolume(tank, unit), unit, capacityUnknown };
}

/** Another unit: a capacity that stands as stored is shown in it, a typed one stays as typed. */
export function withUnit(form: TankForm, unit: VolumeUnit, stored: Tank | null): TankForm {
	const untouched = stored !== null && form.capacity === typedVolume(stored, form.unit);
	return { ...form, unit, capacity: untouched ? typedVolume(stored, unit) : form.capacity };
}

/** The tank, or what is wrong with the capacity. */
export function readTank(form: TankForm, stored: Tank | null): Result<Tank, string> {
	const { capacity, unit, capacityUnknown } = form;
	if (capacityUnknown) return ok({ ...stored, ...unknownTank });
	// Shown rounded; what was not touched stays exact.
	if (stored && !isUnknown(stored) && capacity === typedVolume(stored, unit)) return ok(stored);
	const typed = readNumber(capacity, fromLitres(least, unit), fromLitres(most, unit), {
		example: typedVolume({ capacityL: litres(55) }, unit, 1),
		limits: numbersWords().limits(volume(least, unit), volume(most, unit)),
		inUnit: true,
	});
	if (!typed.ok) return err(typed.error);
	const capacityL = toLitres(typed.value, unit);
	if (!stored) return ok({ capacityL });
	const { gaugeSd: _, clickSd: __, ...rest } = stored;
	return ok({ ...(isUnknown(stored) ? rest : stored), capacityL });
}

function typedVolume({ capacityL }: Tank, unit: VolumeUnit, digits = 3): string {
	return typedNumber(Number(fromLitres(capacityL, unit).toFixed(digits)));
}
