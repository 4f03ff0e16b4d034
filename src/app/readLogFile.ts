/** The text of a file that somebody chose. */
import { err, ok, type Result } from "../domain/result";
import { longestFile, longestFileWords } from "../store/limits";
import { openerWords } from "./words/opener";

export async function readLogFile(file: File): Promise<Result<string, string>> {
	if (file.size > longestFile) return err(openerWords().tooLong(longestFileWords));
	let bytes: ArrayBuffer;
	try {
		bytes = await file.arrayBuffer();
	} catch {
		return err(openerWords().unreadable);
	}
	try {
		return ok(new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes));
	} catch {
		return err(openerWords().notText);
	}
}
