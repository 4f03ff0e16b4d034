// Prints "tests: N passed, M failed" for the last line of a CI run: REPORT STATUS pairs, each a JSON report of Vitest and
// the status that its run ended with.
import { existsSync, readFileSync } from "node:fs";

const args = process.argv.slice(2);
let passed = 0;
let failed = 0;
for (let i = 0; i < args.length; i += 2) {
	const [path, status] = args.slice(i);
	if (existsSync(path)) {
		const report = JSON.parse(readFileSync(path, "utf8"));
		// A file that could not be loaded has no tests to fail, yet is a failure.
		const broken = report.testResults.filter(
			(/** @type {{ status: string, assertionResults: { status: string }[] }} */ file) =>
				file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed"),
		).length;
		passed += report.numPassedTests;
		// Errors outside of any test also fail the run, and the report may know nothing of them.
		failed += report.numFailedTests + broken || (report.success && status === "0" ? 0 : 1);
	} else {
		failed++;
		console.log("A command stopped before its tests: see above.");
	}
}
console.log(`tests: ${passed} passed, ${failed} failed`);
