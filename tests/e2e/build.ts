import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { TestProject } from "vitest/node";

declare module "vitest" {
	interface ProvidedContext {
		/** Folder of the built app, one for the whole run: `inject("dist")`. */
		dist: string;
	}
}

const root = join(import.meta.dirname, "../..");

/** Builds the app as a driver gets it into `folder`. Tests of updates name a second version. */
export function buildApp(folder: string, version?: string): void {
	const vite = join(root, "node_modules/vite/bin/vite.js");
	// In a process of its own: the test runner's NODE_ENV would build an app without a service worker.
	const env: NodeJS.ProcessEnv = {
		...process.env,
		NODE_ENV: "production",
		...(version && { HEELTAP_VERSION: version }),
	};
	delete env.VITEST;
	const args = [vite, "build", "--logLevel", "warn", "--outDir", folder, "--emptyOutDir"];
	const { status, stderr, stdout } = spawnSync(process.execPath, args, { cwd: root, env, encoding: "utf8" });
	if (status !== 0) throw new Error(`the app does not build:\n${stdout}${stderr}`);
}

export function setup(project: TestProject): () => void {
	const dist = mkdtempSync(join(tmpdir(), "heeltap-dist-"));
	buildApp(dist);
	project.provide("dist", dist);
	return () => rmSync(dist, { recursive: true, force: true });
}
