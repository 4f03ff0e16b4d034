/** What the driver has chosen for this device; no part of any log. */
import type { VolumeUnit } from "../domain/units";

export interface Settings {
	readonly activeCar: string | null;
	/** By car id. */
	readonly units: Readonly<Record<string, VolumeUnit>>;
	readonly theme: Theme;
	/** Whether the owner wants the system to notify of a new warning. */
	readonly notify: boolean;
	/** Uncertainties as typed last, by what measures. */
	readonly instruments: Readonly<Record<string, string>>;
	/** Whether a car is replicated: only then is there anything to load for it. */
	readonly live?: boolean;
}

export type Theme = "auto" | "light" | "dark" | "sun";

const themes: readonly Theme[] = ["auto", "light", "dark", "sun"];

export const firstSettings: Settings = { activeCar: null, units: {}, theme: "auto", notify: false, instruments: {} };

/** Settings as stored, what is missing or unknown filled in. */
export function readSettings(raw: unknown): Settings {
	const stored = typeof raw === "object" && raw !== null ? (raw as Partial<Settings>) : {};
	const settings = { ...firstSettings, ...stored };
	return themes.includes(settings.theme) ? settings : { ...settings, theme: "auto" };
}
