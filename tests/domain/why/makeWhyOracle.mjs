// node tests/domain/why/makeWhyOracle.mjs: brings whyOracle.json up to date. A minute or two a history.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { runnerImport } from "vite";

const here = import.meta.dirname;
const file = join(here, "whyOracle.json");
const { module } = await runnerImport(join(here, "plainHistories.ts"), {
	root: join(here, "../../.."),
	configFile: false,
	logLevel: "error",
});
const before = existsSync(file) ? JSON.parse(readFileSync(file, "utf8")) : [];
const answers = module.answers(before, (/** @type {string} */ name) => console.log(name));
writeFileSync(file, `${JSON.stringify(answers, null, "\t")}\n`);
