import { type ChildProcess, spawn } from "node:child_process";
import { cpSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { join } from "node:path";
import { findWebKit } from "../../src/tools/browser.mjs";
import { openTrap } from "../e2e/trap";
import { keyActions, tapActions } from "./actions";
import { type Engine, type EngineMaker, viewport } from "./engine";
import { endWithUs, killTree } from "./processes";
import { openSession } from "./webdriver";

export const webkit: EngineMaker = {
	name: "WebKitGTK",
	keepsData: false,
	served: watched,
	async open(profile): Promise<Engine> {
		const { driver: driverBinary, browser, xvfb } = findWebKit() ?? {};
		if (!driverBinary || !browser || !xvfb)
			throw new Error("the tests need WebKitGTK: run node src/tools/browser.mjs webkit");
		const trap = await openTrap();
		const screen = await openScreen(xvfb);
		const proxy = `127.0.0.1:${trap.port}`;
		const capabilities = {
			alwaysMatch: {
				proxy: { proxyType: "manual", httpProxy: proxy, sslProxy: proxy, noProxy: ["localhost"] },
				"webkitgtk:browserOptions": { binary: browser, args: ["--automation"] },
			},
		};
		const env = {
			...process.env,
			DISPLAY: screen.name,
			HOME: profile,
			...american(profile),
			// It has no sandbox for root.
			...(process.getuid?.() === 0 && { WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: "1" }),
		};
		const { driver, session } = await started(driverBinary, env, capabilities);
		const { send, script } = session;
		await send("POST", "/window/rect", { x: 0, y: 0, ...viewport });
		const frame = viewport.height - (await script<number>("return innerHeight"));
		await send("POST", "/window/rect", { x: 0, y: 0, width: viewport.width, height: viewport.height + frame });

		async function end(ending: () => unknown): Promise<void> {
			await ending();
			killTree(driver.pid ?? 0);
			screen.close();
			trap.close();
		}
		return {
			go: async (url) => void (await send("POST", "/url", { url })),
			reload: async () => void (await send("POST", "/refresh")),
			run: (work, ...args) => script(`return (${work})(...${JSON.stringify(args)})`),
			load: (text) => script(text),
			tap: async (x, y) => void (await send("POST", "/actions", { actions: tapActions(x, y, "mouse") })),
			type: async (text) => void (await send("POST", "/actions", { actions: keyActions(text) })),
			async choose(path) {
				const input = await session.element('input[type="file"]');
				await send("POST", `/element/${input}/value`, { text: path });
			},
			// Where MiniBrowser saves without asking, there being no folder for downloads.
			downloads: profile,
			errors: () => script<string[]>(`return JSON.parse(sessionStorage.getItem("errors") ?? "[]")`),
			leaks: () => [...trap.hits],
			processId: driver.pid ?? 0,
			kill: () => end(() => {}),
			close: () => end(() => send("DELETE", "").catch(() => {})),
		};
	},
};

/** Seldom the browser dies before the driver has heard of it: that is tried again. */
async function started(binary: string, env: NodeJS.ProcessEnv, capabilities: object) {
	for (let tries = 3; ; tries--) {
		const port = await freePort();
		const driver = spawn(binary, [`--port=${port}`, "--host=127.0.0.1"], { stdio: "ignore", env });
		endWithUs(driver.pid ?? 0);
		try {
			return { driver, session: await openSession(`http://127.0.0.1:${port}`, capabilities) };
		} catch (error) {
			killTree(driver.pid ?? 0);
			if (tries === 1) throw error;
		}
	}
}

/** The language of the other two. A machine that has no locale installed is given C.UTF-8 under an American name. */
function american(profile: string): NodeJS.ProcessEnv {
	const folder = join(profile, "locale");
	const plain = "/usr/lib/locale/C.utf8";
	if (existsSync(plain)) cpSync(plain, join(folder, "en_US.utf8"), { recursive: true });
	return { LOCPATH: folder, LC_ALL: "en_US.UTF-8" };
}

/** The driver tells nothing of the console, so the app's first script begins with one that remembers what goes wrong. */
function watched(dist: string, scratch: string): string {
	const folder = join(scratch, "watched");
	cpSync(dist, folder, { recursive: true });
	const [, entry] =
		/<script type="module"[^>]* src="([^"]+)"/.exec(readFileSync(join(folder, "index.html"), "utf8")) ?? [];
	if (!entry) throw new Error("the page has no script to put the watch into");
	const file = join(folder, entry);
	writeFileSync(file, `(${watch})();\n${readFileSync(file, "utf8")}`);
	return folder;
}

/** Runs in the page. */
function watch(): void {
	const note = (what: unknown) => {
		const errors = JSON.parse(sessionStorage.getItem("errors") ?? "[]");
		sessionStorage.setItem("errors", JSON.stringify([...errors, String(what)]));
	};
	// In the first phase, where resources that did not load are heard of, too.
	addEventListener("error", ({ message, target }) => note(message ?? `did not load: ${target}`), true);
	addEventListener("unhandledrejection", ({ reason }) => note(reason));
	addEventListener("securitypolicyviolation", ({ blockedURI }) => note(`against the policy: ${blockedURI}`));
	const told = console.error;
	console.error = (...words: unknown[]) => {
		note(words.join(" "));
		told(...words);
	};
}

/** A display that nobody sees. */
async function openScreen(xvfb: string): Promise<{ name: string; close(): void }> {
	const args = ["-displayfd", "3", "-screen", "0", "1024x1200x24", "-nolisten", "tcp"];
	const server: ChildProcess = spawn(xvfb, args, { stdio: ["ignore", "ignore", "ignore", "pipe"] });
	endWithUs(server.pid ?? 0);
	const number = await new Promise<string>((done, fail) => {
		server.stdio[3]?.once("data", (text) => done(String(text).trim()));
		server.once("exit", () => fail(new Error("Xvfb does not start")));
	});
	return { name: `:${number}`, close: () => killTree(server.pid ?? 0) };
}

async function freePort(): Promise<number> {
	const server = createServer();
	await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
	const { port } = server.address() as AddressInfo;
	await new Promise((done) => server.close(done));
	return port;
}
