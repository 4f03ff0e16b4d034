// node src/tools/run.mjs FILE.ts ARGS…: runs main(ARGS) of FILE.ts. Bundled first: module by module, through a loader's
// accessors, the estimator runs several times slower.
import { mkdir, rm, writeFile } from "node:fs/promises";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "vite";

const root = join(import.meta.dirname, "../..");
const [source, ...args] = process.argv.slice(2);
const name = basename(source, ".ts");
const built = await build({
	root,
	configFile: false,
	logLevel: "error",
	build: {
		ssr: join(root, source),
		target: "node20",
		write: false,
		rolldownOptions: { output: { codeSplitting: false } },
	},
});
if (!("output" in built)) throw new Error(`${source} must be one entry`);
// Beside the packages, so that those it leaves out of the bundle are found.
const folder = join(root, "node_modules/.heeltap");
const file = join(folder, `${name}-${process.pid}.mjs`);
await mkdir(folder, { recursive: true });
await writeFile(file, built.output[0].code);
const { main } = await import(pathToFileURL(file).href).finally(() => rm(file));

// npm has changed to the project's folder; file names mean what they mean where the caller stands.
if (process.env.npm_lifecycle_event === name && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
process.exitCode = await main(args);
