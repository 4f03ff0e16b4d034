/** What is said of what the store hands out as codes and facts, in English. */
import { refusalWords } from "../../src/app/refusal";
import { words } from "../../src/app/words/en/fileFaults";
import { words as storage } from "../../src/app/words/en/storage";
import { logSentence, placeWords } from "../../src/app/words/logSentence";
import { faultOf } from "../../src/store/errors";
import type { LogError } from "../../src/store/logError";

/** The place and what is wrong there, in one line. */
export function saidOf(error: LogError): string {
	return logSentence(error, words);
}

export function placeOf({ where }: LogError): string {
	return placeWords(where, words);
}

/** For `await failing.catch(sentenceOf)`. Of what is no fault of the store: its own message. */
export async function sentenceOf(error: unknown): Promise<string> {
	const fault = faultOf(error);
	if (!fault) return error instanceof Error ? error.message : String(error);
	return fault.kind === "lost" ? storage.losses[fault.facts] : refusalWords(fault);
}
