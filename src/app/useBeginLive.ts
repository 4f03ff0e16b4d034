/** Switches replication on for a car, and shows how it goes. */
import { useState } from "preact/hooks";
import type { LiveAsk } from "../live/state";
import { useApp } from "./app";
import { watchLive } from "./liveWatch";
import { liveWords } from "./words/live";

export function useBeginLive() {
	const { model, toasts } = useApp();
	const [busy, setBusy] = useState(false);
	const [fault, setFault] = useState<string | null>(null);
	return {
		busy,
		fault,
		async begin(ask: Extract<LiveAsk, { readonly do: "on" | "join" }>, carName: string): Promise<void> {
			setBusy(true);
			setFault(null);
			try {
				await model.live(ask);
				const carId = ask.do === "on" ? ask.carId : ask.pairing.carId;
				// A car that is still to come is the active one once it is here.
				await model.saveSettings({ live: true, activeCar: carId });
				watchLive(model, (error) => globalThis.reportError?.(error));
				toasts.show(liveWords().switchedOn(carName));
				location.hash = "#/live";
			} catch (error) {
				setFault(liveWords().unkept);
				globalThis.reportError?.(error);
			} finally {
				setBusy(false);
			}
		},
	};
}
