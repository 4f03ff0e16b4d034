/** An oracle's answers take minutes, so they are kept beside it as JSON. */
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { runnerImport } from "vite";

/**
 * Brings a file of answers up to date. `upToDate(module, before, say)`: all of them, the good ones taken from `before`.
 * @param {string} folder
 * @param {string} source
 * @param {string} kept
 * @param {(module: any, before: unknown[], say: (name: string) => void) => unknown} upToDate
 */
export async function keepAnswers(folder, source, kept, upToDate) {
	const file = join(folder, kept);
	const root = join(import.meta.dirname, "../..");
	const { module } = await runnerImport(join(folder, source), { root, configFile: false, logLevel: "error" });
	const before = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : [];
	const answers = upToDate(module, before, (name) => console.log(name));
	writeFileSync(file, `${JSON.stringify(answers, null, "\t")}\n`);
}
