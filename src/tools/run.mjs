// node src/tools/run.mjs NAME ARGS…: runs main(ARGS) of src/cli/NAME.ts, with Vite as the loader of TypeScript.
import { join } from "node:path";
import { runnerImport } from "vite";

const root = join(import.meta.dirname, "../..");
const [name, ...args] = process.argv.slice(2);
const { module } = await runnerImport(join(root, `src/cli/${name}.ts`), { root, configFile: false, logLevel: "error" });

// npm has changed to the project's folder; file names mean what they mean where the caller stands.
if (process.env.npm_lifecycle_event === name && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
process.exitCode = await module.main(args);
