import { join, matchesGlob, relative } from "node:path";
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

const root = join(import.meta.dirname, "../..");
const include = (process.env.HEELTAP_TESTS ?? "").split(" ");

/** In the order of the list, as the first test that fails ends the run. */
class AsListed extends BaseSequencer {
	override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
		const here = this.ctx.config.root;
		const place = ({ moduleId }: TestSpecification) =>
			include.findIndex((pattern) => matchesGlob(relative(here, moduleId), pattern));
		return [...files].sort((a, b) => place(a) - place(b));
	}
}

/** The tests that are to catch a change to the core. */
export default defineConfig({
	root,
	test: {
		include,
		testTimeout: 300_000,
		setupFiles: "tests/mutation/seeded.ts",
		sequence: { sequencer: AsListed },
	},
});
