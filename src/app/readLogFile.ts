/** The text of a file that somebody chose. */
import { err, ok, type Result } from "../domain/result";
import { longestFile, longestFileWords } from "../store/limits";

export async function readLogFile(file: File): Promise<Result<string, string>> {
	if (file.size > longestFile)
		return err(`The file is over ${longestFileWords}, which no log is: choose a file that Heeltap saved.`);
	let bytes: ArrayBuffer;
	try {
		bytes = await file.arrayBuffer();
	} catch {
		return err("The phone would not give the file: choose it again, from the phone’s own storage.");
	}
	try {
		return ok(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes));
	} catch {
		return err("The file is not UTF-8 text: choose a file that Heeltap saved.");
	}
}
