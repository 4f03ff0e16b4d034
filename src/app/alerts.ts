/** The owner is told outside the app too: a badge on its icon, and a notification if that was asked for. */
import { type Warning, warningsFor } from "../domain/warnings";
import type { FleetCar } from "../keeper/glance";
import { isOver } from "./attention";
import { signalWord, warningWords } from "./text";
import { carsWords } from "./words/cars";
import { language } from "./words/language";

/** How many cars need somebody. */
export function setBadge(count: number): void {
	const badge = count > 0 ? navigator.setAppBadge?.(count) : navigator.clearAppBadge?.();
	badge?.catch(() => {});
}

/** What is to be told of a car; another text is news. */
export function tidingsOf(car: FleetCar): string {
	const warnings = warningsOf(car).map((warning) => [warning.code, "severity" in warning && warning.severity]);
	return JSON.stringify([car.lastAt, isOver(car), car.grave && !car.checked, warnings]);
}

export async function notify(car: FleetCar): Promise<void> {
	if (typeof Notification === "undefined" || Notification.permission !== "granted") return;
	const registration = await navigator.serviceWorker?.getRegistration();
	const { title, body } = notice(car);
	const tag = `${car.carId}/blend`;
	await registration?.showNotification(title, { body, icon: "icon-192.png", tag, data: car.carId, lang: language });
}

export function notice(car: FleetCar): { readonly title: string; readonly body: string } {
	const words = warningsOf(car).map((warning) => warningWords(warning, car.calibration?.name ?? ""));
	const { contradiction, contradictionMore, told } = carsWords();
	const titles = car.grave && !car.checked ? [contradiction] : [];
	const title = [...words.map(({ title }) => title), ...titles][0];
	const sentences = words.map(({ sure, now }) => `${sure} ${now[0]}`);
	if (titles.length > 0) sentences.push(contradictionMore);
	return { title: told(signalWord(), title), body: told(car.name, sentences.join(" ")) };
}

/** That the last entry does not fit is a part of the contradiction, where there is one. */
function warningsOf({ figures, calibration, surprise, grave, checked }: FleetCar): Warning[] {
	return figures ? warningsFor(figures, calibration, grave || checked ? null : surprise) : [];
}
