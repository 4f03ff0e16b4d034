/** What replication needs of a server: one car's messages in order. Real in `natsWire.ts`, a list in the tests. */

export interface Arrived {
	/** Its place among all messages of the server; rising, with gaps where other cars' are. */
	readonly seq: number;
	/** By which the very same message is known again. */
	readonly mark: string;
	readonly data: Uint8Array;
}

export interface Wire {
	/** Rejects with a RefusedByServer, or any other error where the connection is gone. */
	send(messageId: string, data: Uint8Array): Promise<void>;
	/** From the message with this number on, or the first after it. */
	read(from: number): Promise<Reading>;
	close(): Promise<void>;
}

export interface Reading {
	/** How many messages have come that were not taken yet, and how many the server says are still to come. */
	behind(): number;
	/** All that has come, at most so many. */
	take(most: number): readonly Arrived[];
	/** Resolves once there is something to take; rejects when the connection is gone. */
	news(): Promise<void>;
	stop(): void;
}

/** Why a server does not serve this car. */
export type Refusal = "notAllowed" | "ended" | "full" | "noStream" | "tooLarge" | "policy";

export class RefusedByServer extends Error {
	override readonly name = "RefusedByServer";

	constructor(readonly why: Refusal) {
		super(why);
	}
}
