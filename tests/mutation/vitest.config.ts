import { join } from "node:path";
import { defineConfig } from "vitest/config";

const root = join(import.meta.dirname, "../..");

/** The tests that are to catch a change to the core. */
export default defineConfig({
	root,
	test: {
		include: ["tests/{domain,plan,datalog,cli}/**/*.test.ts"],
		testTimeout: 120_000,
	},
});
