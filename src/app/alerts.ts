/** The owner is told outside the app too: a badge on its icon, and a notification if that was asked for. */
import { type Warning, warningsFor } from "../domain/warnings";
import type { State } from "./model";
import { signalWord, warningWords } from "./text";
import { language } from "./words/language";

let told: { readonly car: string | null; readonly key: string } | null = null;

/** Call on every change; tells of each warning once. */
export function warnOwner({ phase, car, account, settings }: State): void {
	if (phase === "ready" && !car) setBadge(0);
	if (!account) return;
	const { now } = account;
	const warnings = now ? warningsFor(now.estimate, now.calibration, now.surprise) : [];
	const key = JSON.stringify([now?.last.id, warnings.map(gravity)]);
	if (told?.car === account.car.id && told.key === key) return;
	// A car that was just opened has no news: the screen says it all.
	const news = told?.car === account.car.id;
	told = { car: account.car.id, key };
	setBadge(warnings.length);
	// Whoever looks at the screen has been told.
	if (news && settings.notify && warnings.length > 0 && document.visibilityState === "hidden") {
		notify(account.car.name, warnings, now?.calibration?.name ?? "");
	}
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
	await registration?.showNotification(`${signalWord()}: ${words[0].title}`, {
		body: `${carName}. ${words.map(({ sure, now }) => `${sure} ${now[0]}`).join(" ")}`,
		icon: "icon-192.png",
		tag: "blend",
		lang: language,
	});
}
