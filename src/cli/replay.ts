/** `npm run --silent replay -- FILE`: the account of a log, one JSON object a line. */
import { readFile, stat } from "node:fs/promises";
import { words } from "../app/words/en/fileFaults";
import { logSentence } from "../app/words/logSentence";
import { type Entry, replay } from "../domain/estimator/replay";
import { parseLog } from "../store/backup";
import { longestFile, longestFileWords } from "../store/limits";
import { printable } from "../store/logError";

/** Prints the account and returns 0; or one line on standard error, and returns 1. */
export async function main(args: readonly string[]): Promise<number> {
	try {
		await print(linesOf(await textOf(args)));
		return 0;
	} catch (error) {
		process.stderr.write(`${messageOf(error).replace(/\s+/g, " ")}\n`);
		return 1;
	}
}

function linesOf({ name, text }: Source): string {
	const log = parseLog(text);
	if (!log.ok) throw new Error(`${name}: ${logSentence(log.error, words)}`);
	try {
		return Array.from(replay(log.value.car, log.value.events), lineOf).join("");
	} catch (error) {
		throw new Error(`${name}: the log can't be replayed: ${messageOf(error)}`);
	}
}

function lineOf({ event, estimate }: Pick<Entry, "event" | "estimate">): string {
	const { median, low, high, below, above, lawfulLow, lawfulHigh } = estimate;
	return `${JSON.stringify({ id: event.id, at: event.at, median, low, high, below, above, lawfulLow, lawfulHigh })}\n`;
}

function print(lines: string): Promise<void> {
	process.stdout.on("error", () => {});
	return new Promise((resolve, reject) => {
		// A reader that has seen enough, such as head, is no failure.
		process.stdout.write(lines, (error) => (error && codeOf(error) !== "EPIPE" ? reject(error) : resolve()));
	});
}

interface Source {
	/** The file's name as it can be printed on one line. */
	readonly name: string;
	readonly text: string;
}

async function textOf(args: readonly string[]): Promise<Source> {
	const [file] = args;
	if (file === undefined || args.length > 1) throw new Error("usage: npm run --silent replay -- FILE (one log file)");
	const name = printable(file);
	const bytes = await bytesOf(file).catch((error: unknown) => {
		throw new Error(`${name}: ${reasonOf(error)}`);
	});
	try {
		return { name, text: new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes) };
	} catch {
		throw new Error(`${name}: the file is not UTF-8 text: choose a file that Heeltap saved`);
	}
}

async function bytesOf(file: string): Promise<Uint8Array> {
	const found = await stat(file);
	if (found.isDirectory()) throw new Error("it is a directory: name the log file in it");
	if (found.size > longestFile) throw new Error(`the file is over ${longestFileWords}, which no log is`);
	return readFile(file);
}

function reasonOf(error: unknown): string {
	const code = codeOf(error);
	if (code === "ENOENT") return "there is no such file";
	if (code === "EACCES") return "the file may not be read: give leave to read it";
	return code ? `the file can't be read (${code})` : messageOf(error);
}

function codeOf(error: unknown): string | undefined {
	return (error as NodeJS.ErrnoException).code;
}

function messageOf(error: unknown): string {
	return error instanceof Error ? error.message : String(error);
}
