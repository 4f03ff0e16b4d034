// node tests/accuracy/makeOracle.mjs: brings oracle.json up to date. About a minute a history, 1 GB of memory.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { runnerImport } from "vite";

const here = import.meta.dirname;
const file = join(here, "oracle.json");
const { module } = await runnerImport(join(here, "oracle.ts"), {
	root: join(here, "../.."),
	configFile: false,
	logLevel: "error",
});
const before = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : [];
const answers = module.upToDate(before, (/** @type {string} */ name) => console.log(name));
writeFileSync(file, `${JSON.stringify(answers, null, "\t")}\n`);
