import { join } from "node:path";
import { defineConfig } from "vitest/config";

const root = join(import.meta.dirname, "../..");

/** The tests that are to catch a change to the core. */
export default defineConfig({
	root,
	test: {
		include: (process.env.HEELTAP_TESTS ?? "").split(" "),
		testTimeout: 120_000,
	},
});
