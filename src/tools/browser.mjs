// Finds the browsers and the server of the end-to-end tests. Run as a command with their names it installs them where it may (Debian,
// as root) or says what to install: the tests are never skipped.
import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";

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

/** Path of the Chromium to use; null when there is none. CHROMIUM_PATH overrides the search. */
export function findChromium() {
	const mac = "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome";
	const names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];
	return findProgram(process.env.CHROMIUM_PATH, names, mac);
}

/** Path of the Firefox to use; null when there is none. FIREFOX_PATH overrides the search. */
export function findFirefox() {
	const mac = "/Applications/Firefox.app/Contents/MacOS/firefox";
	return findProgram(process.env.FIREFOX_PATH, ["firefox-esr", "firefox"], mac);
}

/** WebKitGTK's driver, the browser that it drives, and a display for it; null unless all three are there. */
export function findWebKit() {
	const driver = findProgram(undefined, ["WebKitWebDriver"]);
	const xvfb = findProgram(undefined, ["Xvfb"]);
	const browser = miniBrowsers().find((path) => existsSync(path));
	return driver && xvfb && browser ? { driver, xvfb, browser } : null;
}

/** Path of the nats-server to use; null when there is none. NATS_SERVER_PATH overrides the search. */
export function findNatsServer() {
	// Debian's is where only root looks.
	return findProgram(
		process.env.NATS_SERVER_PATH,
		["nats-server"],
		"/usr/sbin/nats-server",
		"/usr/local/sbin/nats-server",
	);
}

/** Where distributions put MiniBrowser, in a folder by WebKitGTK's version of its interface. */
function miniBrowsers() {
	const libraries = [
		"/usr/libexec",
		"/usr/lib64",
		"/usr/lib",
		...within("/usr/lib").filter((path) => /-linux-gnu/.test(path)),
	];
	const folders = libraries.flatMap(within).filter((path) => /\/webkit2?gtk-[\d.]+$/.test(path));
	return folders.map((folder) => join(folder, "MiniBrowser"));
}

function within(/** @type {string} */ folder) {
	return existsSync(folder) ? readdirSync(folder).map((name) => join(folder, name)) : [];
}

/** @type {(named: string | undefined, names: string[], ...elsewhere: string[]) => string | null} */
function findProgram(named, names, ...elsewhere) {
	if (named) return existsSync(named) ? named : null;
	const folders = [...(process.env.PATH ?? "").split(delimiter), "/usr/bin"].filter(Boolean);
	const candidates = names.flatMap((name) => folders.map((folder) => join(folder, name)));
	return [...candidates, ...elsewhere].find((path) => existsSync(path)) ?? null;
}

/** @type {Record<string, { find(): unknown, packages: string[], need: string }>} */
const browsers = {
	chromium: {
		find: findChromium,
		packages: ["chromium"],
		need: "a Chromium: install Chromium or Google Chrome, or set CHROMIUM_PATH to one.",
	},
	firefox: {
		find: findFirefox,
		packages: ["firefox-esr"],
		need: "a Firefox: install Firefox or Firefox ESR, or set FIREFOX_PATH to one.",
	},
	webkit: {
		find: findWebKit,
		packages: ["webkit2gtk-driver", "xvfb"],
		need: "WebKitGTK: on Linux install WebKitWebDriver with MiniBrowser (webkit2gtk-driver) and Xvfb (xvfb).",
	},
	nats: {
		find: findNatsServer,
		packages: ["nats-server"],
		need: "a nats-server, 2.9 or later: install nats-server, or set NATS_SERVER_PATH to one.",
	},
};

function ensure(/** @type {string[]} */ names) {
	const missing = names.filter((name) => !browsers[name].find());
	const debian = existsSync("/etc/os-release") && /^ID=debian$/m.test(readFileSync("/etc/os-release", "utf8"));
	const named = process.env.CHROMIUM_PATH || process.env.FIREFOX_PATH || process.env.NATS_SERVER_PATH;
	if (missing.length > 0 && debian && process.getuid?.() === 0 && !named) {
		const packages = missing.flatMap((name) => browsers[name].packages);
		console.error(`Installing ${packages.join(" ")} for the tests (apt-get) …`);
		const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
		for (const args of [["update"], ["install", "-y", "--no-install-recommends", ...packages]])
			spawnSync("apt-get", ["-qq", ...args], { stdio: ["ignore", 2, 2], env });
	}
	const absent = missing.filter((name) => !browsers[name].find());
	for (const name of absent) console.error(`The tests need ${browsers[name].need}`);
	if (absent.length > 0) process.exit(1);
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) ensure(process.argv.slice(2));
