/** What every screen is given. */
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import { type Model, useModel } from "./model";
import type { State } from "./state";
import type { Toasts } from "./toasts";

export interface App {
	readonly model: Model;
	readonly toasts: Toasts;
	readonly now: () => number;
}

export const AppContext = createContext<App | null>(null);

export function useApp(): App {
	const app = useContext(AppContext);
	if (!app) throw new Error("screens must be rendered inside the app");
	return app;
}

export function useAppState(): App & { readonly state: State } {
	const app = useApp();
	return { ...app, state: useModel(app.model) };
}

/** Local time with its offset, ISO 8601: the log keeps the time of day as the driver knew it. */
export function isoWithOffset(instant: number): string {
	const offset = -new Date(instant).getTimezoneOffset();
	const local = new Date(instant + offset * 60_000).toISOString().slice(0, 19);
	const part = (value: number) => String(Math.floor(value)).padStart(2, "0");
	return `${local}${offset < 0 ? "-" : "+"}${part(Math.abs(offset) / 60)}:${part(Math.abs(offset) % 60)}`;
}
