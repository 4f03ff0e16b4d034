/** How replication stands, in one sentence. */
import type { LiveState } from "../live/state";
import { liveWords } from "./words/live";

export function liveSentence({ phase, waiting, why }: LiveState): string {
	const { state } = liveWords();
	switch (phase) {
		case "sending":
			return state.sending(waiting);
		case "offline":
			return state.offline(waiting);
		case "refused":
			return state.refused[why ?? "notAllowed"];
		default:
			return state[phase];
	}
}
