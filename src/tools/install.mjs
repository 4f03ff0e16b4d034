// Runs before every command: installs the packages of the lock file unless they are there, in the lock's versions.
// Plain Node without dependencies, and silent on standard output, which belongs to the command that follows.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";

const root = join(import.meta.dirname, "../..");

/** @returns {Record<string, { version?: string, integrity?: string, optional?: boolean }>} */
function packagesIn(/** @type {string} */ lock) {
	try {
		return JSON.parse(readFileSync(join(root, lock), "utf8")).packages;
	} catch {
		return {};
	}
}

// npm's own record of what it has installed, written when it was done.
const { "": _, ...wanted } = packagesIn("package-lock.json");
const present = packagesIn("node_modules/.package-lock.json");
const complete = Object.entries(wanted).every(
	([path, { version, integrity, optional }]) =>
		// Optional ones are for other systems; a present one must still be the right one.
		(optional && !present[path]) || (present[path]?.version === version && present[path]?.integrity === integrity),
);

if (!complete) {
	console.error("Installing packages (npm ci) …");
	// Its standard output goes to standard error. On Windows npm is a script, which needs a shell.
	const { status } = spawnSync("npm", ["ci", "--ignore-scripts", "--no-audit", "--no-fund"], {
		cwd: root,
		stdio: ["ignore", 2, 2],
		shell: process.platform === "win32",
		// With NODE_ENV=production npm would leave out the build's tools.
		env: { ...process.env, NODE_ENV: "development" },
	});
	if (status !== 0) process.exit(status ?? 1);
}
