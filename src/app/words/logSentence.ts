/** Why a log file was not taken, in the words of a language. The command line takes the English ones, without a browser. */
import type { LogError, LogFault, Shown, Where } from "../../store/logError";
import type { Words } from "./en/fileFaults";

/** One line: the place and what is wrong there. */
export function logSentence({ where, fault, kind }: LogError, words: Words): string {
	const what = faultSentence(fault, words);
	return words.told(placeWords(where, words), kind === "notALog" && fault.code === "must" ? words.notOurs(what) : what);
}

export function placeWords(where: Where, words: Words): string {
	if (where === "file") return words.theFile;
	return "path" in where ? where.path : words.at(where.line, where.column);
}

function faultSentence(fault: LogFault, words: Words): string {
	switch (fault.code) {
		case "must": {
			const must = fault.must === "own" ? words.own(fault.earlier ?? "") : words.must[fault.must];
			return fault.got === null ? words.missing(must) : words.instead(must, shown(fault.got, words));
		}
		case "expected":
			return words.unexpected(words.expected[fault.expected], fault.got);
		case "twice":
			return words.twice(fault.name);
		case "lastComma":
			return words.lastComma(fault.before);
		case "begins":
			return words.begins(fault.got);
		case "tooManyEvents":
			return words.tooManyEvents(fault.count);
		default:
			return words[fault.code];
	}
}

function shown(got: Shown, words: Words): string {
	return typeof got === "string" ? got : words[got.a];
}
