/** The owner is told outside the app too: a badge on its icon, and a notification if that was asked for. */
import { type Warning, warningsFor } from "../domain/warnings";
import type { State } from "./model";
import { signalWord, warningWords } from "./text";

let told: string | null = null;

/** Call on every change; tells of each warning once. */
export function warnOwner(state: State): void {
	const { account, settings } = state;
	if (!account) return;
	const { now, car } = account;
	const warnings = now ? warningsFor(now.estimate, now.calibration, now.surprise) : [];
	const key = JSON.stringify([car.id, now?.last.id, warnings.map(gravity)]);
	if (key === told) return;
	// Nothing has changed since the app was opened: the screen says it all.
	const opening = told === null;
	told = key;
	setBadge(warnings.length);
	if (!opening && settings.notify && warnings.length > 0) notify(car.name, warnings, now?.calibration?.name ?? "");
}

function gravity(warning: Warning): string {
	return `${warning.code} ${"severity" in warning ? warning.severity : ""}`;
}

function setBadge(count: number): void {
	const badge = count > 0 ? navigator.setAppBadge?.(count) : navigator.clearAppBadge?.();
	badge?.catch(() => {});
}

async function notify(carName: string, warnings: readonly Warning[], calibrationName: string): Promise<void> {
	if (typeof Notification === "undefined" || Notification.permission !== "granted") return;
	const words = warnings.map((warning) => warningWords(warning, calibrationName));
	const registration = await navigator.serviceWorker?.getRegistration();
	await registration?.showNotification(`${signalWord}: ${words[0].title}`, {
		body: `${carName}. ${words.map(({ sure, now }) => `${sure} ${now[0]}`).join(" ")}`,
		icon: "icon-192.png",
		tag: "blend",
	});
}
