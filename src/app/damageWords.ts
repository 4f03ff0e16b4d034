/** What is missing on this phone, and what came back, in words. */
import type { CarDamage } from "../store/damage";
import { noticesWords } from "./words/notices";

/** One line about one car: what is wrong with it. */
export function damageWords({ gone, returned, missing, changed, strays, settings }: CarDamage): string {
	const words = noticesWords();
	if (returned) return words.returned;
	const parts = [
		...(gone ? [words.carGone] : []),
		...(missing > 0 ? [words.entriesMissing(missing)] : []),
		...(changed > 0 ? [words.entriesChanged(changed)] : []),
		...(strays > 0 ? [words.strays(strays)] : []),
		...(settings ? [words.oldSettings] : []),
	];
	return parts.length > 0 ? parts.join(" ") : words.otherEntries;
}

/** What can be done about all of it. */
export function remedyWords(copied: boolean, missing: number, lost: number): string {
	const words = noticesWords();
	if (!copied) return words.noCopy;
	if (lost === 0) return words.wholeCopy;
	return lost < missing ? words.nowhereButRest(lost) : words.nowhere(lost);
}

/** What came back, to be said afterwards. */
export function backWords(cars: readonly CarDamage[]): string {
	const words = noticesWords();
	const said = cars.flatMap((car) => {
		const back = car.missing - car.lost + car.changed;
		const what = [
			...(car.gone ? [words.backCar] : []),
			...(back > 0 ? [words.backEntries(back)] : []),
			...(car.settings ? [words.backSettings] : []),
		];
		return what.length > 0 ? [words.backOf(words.and(what), car.name ?? words.aCarAmong)] : [];
	});
	const lost = cars.reduce((sum, car) => sum + car.lost, 0);
	const mended = said.length > 0 ? words.back(said.join("; ")) : words.inOrder;
	return lost === 0 ? mended : words.notBack(mended, lost);
}
