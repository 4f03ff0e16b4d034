/** How a car's replication stands, as the screen is told of it. */
import { useEffect, useState } from "preact/hooks";
import { type LiveState, liveChannel } from "../live/state";
import { useApp } from "./app";

/** `state` is undefined until it is known; null: it is off. */
export function useLive(carId: string | null) {
	const { model } = useApp();
	const [state, setState] = useState<LiveState | null | undefined>(undefined);
	useEffect(() => {
		let current = true;
		let asking = false;
		async function look(): Promise<void> {
			if (asking) return;
			asking = true;
			const answer = await model.live({ do: "states" }).catch(() => null);
			asking = false;
			if (current && answer) setState(answer.states.find((state) => state.carId === carId) ?? null);
		}
		const channel = new BroadcastChannel(liveChannel);
		channel.onmessage = () => void look();
		// Times pass, and a message may have come before the channel was open.
		const timer = setInterval(look, 2_000);
		void look();
		return () => {
			current = false;
			clearInterval(timer);
			channel.close();
		};
	}, [carId]);
	return state;
}
