import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { findFirefox } from "../../src/tools/browser.mjs";
import { openTrap } from "../e2e/trap";
import { keyActions, tapActions } from "./actions";
import { type Bidi, connectBidi } from "./bidi";
import { type Engine, type EngineMaker, viewport } from "./engine";
import { endWithUs, killTree } from "./processes";

/** Without these Firefox greets, updates itself, or asks where downloads should go. */
const quiet = {
	"app.normandy.enabled": false,
	"app.update.disabledForTesting": true,
	"browser.aboutwelcome.enabled": false,
	"browser.download.folderList": 2,
	"browser.download.useDownloadDir": true,
	"browser.newtabpage.enabled": false,
	"browser.sessionstore.resume_from_crash": false,
	"browser.shell.checkDefaultBrowser": false,
	"browser.startup.page": 0,
	"browser.tabs.warnOnClose": false,
	"datareporting.policy.dataSubmissionEnabled": false,
	"extensions.systemAddon.update.enabled": false,
	"extensions.update.enabled": false,
	"network.captive-portal-service.enabled": false,
	"network.connectivity-service.enabled": false,
	"services.settings.server": "data:,nothing",
	"toolkit.startup.max_resumed_crashes": -1,
	"toolkit.telemetry.server": "data:,nothing",
	"ui.prefersReducedMotion": 1,
};

export const firefox: EngineMaker = {
	name: "Firefox",
	keepsData: true,
	served: (dist) => dist,
	async open(profile): Promise<Engine> {
		const binary = findFirefox();
		if (!binary) throw new Error("the tests need a Firefox: run node src/tools/browser.mjs firefox");
		const trap = await openTrap();
		const downloads = join(profile, "downloads");
		mkdirSync(downloads, { recursive: true });
		const proxy = Object.fromEntries(
			["http", "ssl"].flatMap((kind) => [
				[`network.proxy.${kind}`, "127.0.0.1"],
				[`network.proxy.${kind}_port`, trap.port],
			]),
		);
		const chosen = { ...quiet, ...proxy, "network.proxy.type": 1, "browser.download.dir": downloads };
		writeFileSync(
			join(profile, "user.js"),
			Object.entries(chosen)
				.map((pair) => `user_pref(${JSON.stringify(pair).slice(1, -1)});\n`)
				.join(""),
		);
		const browser = spawn(binary, ["--headless", "--no-remote", "--remote-debugging-port=0", "--profile", profile], {
			stdio: ["ignore", "ignore", "pipe"],
		});
		endWithUs(browser.pid ?? 0);
		const exit = new Promise<void>((done) => browser.once("exit", () => done()));
		const bidi = await connectBidi(`${await addressOf(browser)}/session`);
		const page = await openPage(bidi);

		async function run<Args extends readonly unknown[], Answer>(work: (...args: Args) => unknown, ...args: Args) {
			const told = await page.script(`(async () => JSON.stringify(await (${work})(...${JSON.stringify(args)})))()`);
			return (told === undefined ? undefined : JSON.parse(told)) as Answer;
		}
		async function end(ending: () => unknown): Promise<void> {
			await ending();
			await exit;
			killTree(browser.pid ?? 0);
			bidi.close();
			trap.close();
		}
		return {
			go: (url) => page.go(url),
			reload: () => page.reload(),
			run,
			load: async (script) => void (await page.script(script)),
			tap: (x, y) => page.act(tapActions(x, y, "touch")),
			type: (text) => page.act(keyActions(text)),
			choose: (path) => page.choose('input[type="file"]', path),
			downloads,
			errors: async () => page.errors,
			leaks: (origin) => [
				...page.requests.filter((url) => /^(http|ws)/.test(url) && new URL(url).origin !== origin),
				...trap.hits,
			],
			processId: browser.pid ?? 0,
			kill: () => end(() => killTree(browser.pid ?? 0)),
			close: () => end(() => bidi.send("browser.close").catch(() => {})),
		};
	},
};

function addressOf({ stderr }: ChildProcess): Promise<string> {
	return new Promise((done, fail) => {
		let said = "";
		stderr?.setEncoding("utf8").on("data", (text: string) => {
			said = (said + text).slice(-10_000);
			const address = /WebDriver BiDi listening on (ws:\S+)/.exec(said)?.[1];
			if (address) done(address);
		});
		stderr?.once("end", () => fail(new Error(`Firefox does not start:\n${said}`)));
	});
}

interface Evaluated {
	readonly type: "success" | "exception";
	readonly result?: { readonly value?: string };
	readonly exceptionDetails?: { readonly text: string };
}

/** The one tab that there is. */
async function openPage(bidi: Bidi) {
	const errors: string[] = [];
	const requests: string[] = [];
	bidi.on("log.entryAdded", ({ level, text }: { level: string; text: string }) => {
		if (level === "error") errors.push(text);
	});
	bidi.on("network.beforeRequestSent", ({ request }: { request: { url: string } }) => requests.push(request.url));
	await bidi.send("session.new", { capabilities: {} });
	await bidi.send("session.subscribe", { events: ["log.entryAdded", "network.beforeRequestSent"] });
	const tree = await bidi.send<{ contexts: { context: string }[] }>("browsingContext.getTree");
	const [{ context }] = tree.contexts;
	await bidi.send("browsingContext.setViewport", { context, viewport, devicePixelRatio: 2 });
	const send = async (method: string, params: object) => void (await bidi.send(method, { context, ...params }));

	return {
		errors,
		requests,
		go: (url: string) => send("browsingContext.navigate", { url, wait: "complete" }),
		reload: () => send("browsingContext.reload", { wait: "complete" }),
		act: (actions: object) => send("input.performActions", { actions }),
		/** What a script ends in, or what the promise resolves to that it ends in; text, or nothing. */
		async script(expression: string): Promise<string | undefined> {
			const { type, result, exceptionDetails } = await bidi.send<Evaluated>("script.evaluate", {
				expression,
				target: { context },
				awaitPromise: true,
			});
			if (type === "exception") throw new Error(exceptionDetails?.text);
			return result?.value;
		},
		async choose(css: string, path: string): Promise<void> {
			const locator = { type: "css", value: css };
			const { nodes } = await bidi.send<{ nodes: { sharedId: string }[] }>("browsingContext.locateNodes", {
				context,
				locator,
			});
			const [{ sharedId }] = nodes;
			await send("input.setFiles", { element: { sharedId }, files: [path] });
		},
	};
}
