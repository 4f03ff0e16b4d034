// Prints "tests: N passed, M failed" from Vitest's JSON report, for the last line of a CI run that ended with a status.
import { existsSync, readFileSync } from "node:fs";

const [path = "", status = "0"] = process.argv.slice(2);
if (existsSync(path)) {
	const report = JSON.parse(readFileSync(path, "utf8"));
	// A file that could not be loaded has no tests to fail, yet is a failure.
	const broken = report.testResults.filter(
		(/** @type {{ status: string, assertionResults: { status: string }[] }} */ file) =>
			file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed"),
	).length;
	const failed = report.numFailedTests + broken;
	// Errors outside of any test also fail the run, and the report may know nothing of them.
	console.log(`tests: ${report.numPassedTests} passed, ${failed || (report.success && status === "0" ? 0 : 1)} failed`);
} else {
	console.log("tests: 0 passed, 1 failed (stopped before the tests: see above)");
}
