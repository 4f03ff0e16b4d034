/** What the store could not do, fit to be shown. */
import { type Fault, faultOf } from "../store/errors";
import { storageWords } from "./words/storage";

export interface Failure {
	readonly text: string;
	/** Nothing could be written for want of room: what was typed is on the screen alone, so it is not to be reloaded. */
	readonly unwritten: boolean;
}

export async function failureOf(error: unknown): Promise<Failure> {
	const fault = faultOf(error);
	if (fault?.kind === "lost") {
		const unwritten = fault.facts === "full" || fault.facts === "unwritten";
		return { text: storageWords().losses[fault.facts], unwritten };
	}
	const message = error instanceof Error ? error.message : String(error);
	return { text: (await refusalOf(fault)) ?? storageWords().unforeseen(message), unwritten: false };
}

/** What hardly ever comes up loads when it does. */
async function refusalOf(fault: Exclude<Fault, { kind: "lost" }> | null): Promise<string | null> {
	if (!fault) return null;
	try {
		return await (await import("./refusal")).refusalWords(fault);
	} catch {
		return null;
	}
}
