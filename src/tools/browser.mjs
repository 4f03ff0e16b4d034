// Finds Chromium for the end-to-end tests. Run as a command it installs one where it may (Debian, as root) or says
// what to install: the tests are never skipped.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";

const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
const elsewhere = ["/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"];

/** Path of the Chromium to use; null when there is none. CHROMIUM_PATH overrides the search. */
export function findChromium() {
	const named = process.env.CHROMIUM_PATH;
	if (named) return existsSync(named) ? named : null;
	const folders = [...(process.env.PATH ?? "").split(delimiter), "/usr/bin"].filter(Boolean);
	const candidates = names.flatMap((name) => folders.map((folder) => join(folder, name)));
	return [...candidates, ...elsewhere].find((path) => existsSync(path)) ?? null;
}

/** Flags without which Chromium does not start as root, or calls home at every start. */
export const chromiumFlags = [
	"--no-sandbox",
	"--disable-gpu",
	"--disable-quic",
	"--no-first-run",
	"--disable-background-networking",
	"--disable-component-update",
	"--disable-sync",
];

function ensureChromium() {
	if (findChromium()) return;
	const debian = existsSync("/etc/os-release") && /^ID=debian$/m.test(readFileSync("/etc/os-release", "utf8"));
	if (debian && process.getuid?.() === 0 && !process.env.CHROMIUM_PATH) {
		console.error("Installing Chromium for the tests (apt-get) …");
		const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
		for (const args of [["update"], ["install", "-y", "--no-install-recommends", "chromium"]])
			spawnSync("apt-get", ["-qq", ...args], { stdio: ["ignore", 2, 2], env });
	}
	if (!findChromium()) {
		console.error("The tests need a Chromium: install Chromium or Google Chrome, or set CHROMIUM_PATH to one.");
		process.exit(1);
	}
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) ensureChromium();
