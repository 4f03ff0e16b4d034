/** What is missing on this phone, and what came back, in words. */
import type { CarDamage } from "../store/damage";

/** One line about one car: what is wrong with it. */
export function damageWords({ gone, returned, missing, changed, strays, settings }: CarDamage): string {
	if (returned) return "It had been removed, and the phone’s storage brought an older state of it back.";
	const parts = [
		...(gone ? ["The car itself is missing."] : []),
		...(missing > 0 ? [`${entries(missing)} ${missing === 1 ? "is" : "are"} missing.`] : []),
		...(changed > 0 ? [`${entries(changed)} no longer ${changed === 1 ? "says" : "say"} what was saved.`] : []),
		...(strays > 0 ? [`${entries(strays)} ${strays === 1 ? "belongs" : "belong"} to another car.`] : []),
		...(settings ? ["Its name, tank or calibrations are older than what was saved."] : []),
	];
	return parts.length > 0 ? parts.join(" ") : "Its entries are not those that were saved.";
}

/** What can be done about all of it. */
export function remedyWords(copied: boolean, missing: number, lost: number): string {
	if (!copied)
		return "This browser keeps no second copy on the phone that could be read. A backup file has what was saved up to its day: open it here.";
	if (lost === 0) return "A second copy on this phone has all of it.";
	const rest = `${entries(lost)} ${lost === 1 ? "is" : "are"} nowhere on this phone; a backup file may have ${lost === 1 ? "it" : "them"}.`;
	return lost < missing ? `${rest} A second copy on this phone has the rest.` : rest;
}

/** What came back, to be said afterwards. */
export function backWords(cars: readonly CarDamage[]): string {
	const said = cars.flatMap((car) => {
		const back = car.missing - car.lost + car.changed;
		const what = [
			...(car.gone ? ["the car"] : []),
			...(back > 0 ? [entries(back)] : []),
			...(car.settings ? ["its settings"] : []),
		];
		return what.length > 0 ? [`${what.join(" and ")} of “${car.name ?? "a car"}”`] : [];
	});
	const lost = cars.reduce((sum, car) => sum + car.lost, 0);
	const mended = said.length > 0 ? `Back: ${said.join("; ")}.` : "The log is in order again.";
	return lost === 0 ? mended : `${mended} ${entries(lost)} could not be brought back.`;
}

function entries(count: number): string {
	return count === 1 ? "1 entry" : `${count} entries`;
}
