/** What the store refused, in words. */
import type { Fault } from "../store/errors";
import type { LogError } from "../store/logError";
import { fileFaultsWords } from "./words/fileFaults";
import { wordsReady } from "./words/language";
import { logSentence } from "./words/logSentence";
import { refusalsWords } from "./words/refusals";

export async function refusalWords(fault: Exclude<Fault, { kind: "lost" }>): Promise<string> {
	await wordsReady();
	const words = refusalsWords();
	switch (fault.kind) {
		case "duplicate": {
			const { of, id, again } = fault.facts;
			const said = words.duplicate[of](JSON.stringify(id));
			return again ? words.again(said) : said;
		}
		case "tooMany":
			return words.tooMany[fault.facts.of](fault.facts.count, fault.facts.most);
		case "refused":
			return logErrorWords(fault.facts);
	}
}

/** Why a log file was not taken, in one line. */
export function logErrorWords(error: LogError): string {
	return logSentence(error, fileFaultsWords());
}
