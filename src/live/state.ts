/** What the screens ask of replication, and what they are told. */
import type { Access, Pairing } from "../share/liveCode";
import type { LiveCar, Progress, Refused } from "./notes";
import type { Refusal } from "./wire";

export type LiveAsk =
	| { readonly do: "states" | "wake" | "rest" }
	/** Makes a key for the car, and begins. */
	| { readonly do: "on"; readonly carId: string; readonly access: Access }
	/** With the key of the phone that showed the code. */
	| { readonly do: "join"; readonly pairing: Pairing }
	| { readonly do: "off"; readonly carId: string }
	/** What the next phone is to be shown. */
	| { readonly do: "pairing"; readonly carId: string; readonly carName: string };

export interface LiveAnswer {
	readonly states: readonly LiveState[];
	readonly pairing: Pairing | null;
}

/** How a car's replication stands. */
export interface LiveState {
	readonly carId: string;
	readonly server: string;
	readonly phase: "connecting" | "taking" | "sending" | "caughtUp" | "offline" | "refused";
	/** Entries that the server lacks, as far as that is known. */
	readonly waiting: number;
	/** Since when it is offline or refused, ms since 1970. */
	readonly since: number | null;
	readonly why: Refusal | null;
	readonly heard: number | null;
	readonly news: number | null;
	readonly refused: Refused;
	/** Entries that wait for what they name. */
	readonly held: number;
}

export function firstState({ carId, access }: LiveCar, { heard, news, refused, held }: Progress): LiveState {
	const what = { carId, server: access.server, heard, news, refused, held: held.length };
	return { ...what, phase: "connecting", waiting: 0, since: null, why: null };
}

/** On which channel tabs and screens hear of it. */
export const liveChannel = "heeltap-live";
