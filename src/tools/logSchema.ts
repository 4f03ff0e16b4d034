import { join } from "node:path";
import { type Plugin, runnerImport } from "vite";
import { z } from "zod/mini";

const wire = join(import.meta.dirname, "../store/wire.ts");

/** Publishes the log format with the app: the zod schema that checks every log, as a JSON Schema. */
export function logSchemaFile(): Plugin {
	return {
		name: "heeltap-log-schema",
		apply: "build",
		async generateBundle() {
			const { module } = await runnerImport<{ logSchema: z.core.$ZodType }>(wire, {
				configFile: false,
				logLevel: "error",
			});
			const schema = { title: "Heeltap log", ...z.toJSONSchema(module.logSchema, { io: "input" }) };
			this.emitFile({
				type: "asset",
				fileName: "heeltap-log.schema.json",
				source: `${JSON.stringify(schema, null, "\t")}\n`,
			});
		},
	};
}
