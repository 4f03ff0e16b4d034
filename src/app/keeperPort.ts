/** The keeper as the screens see it, and the worker that it lives in. */
import { proxy, type Remote, wrap } from "comlink";
import type { Keeper } from "../keeper/keeper";
import type { Opener, Trouble } from "../keeper/worker";

/** Every answer comes later; callbacks cross over as proxies. */
export type KeeperPort = {
	[Name in keyof Keeper]: (...args: Parameters<Keeper[Name]>) => Promise<Awaited<ReturnType<Keeper[Name]>>>;
};

/** Starts the worker with the first question and opens its store; questions asked meanwhile wait. */
export function keeperInWorker(tell: (trouble: Trouble) => void): KeeperPort {
	let opening: Promise<Remote<Keeper>> | null = null;
	function open(): Promise<Remote<Keeper>> {
		const worker = new Worker(new URL("../keeper/worker.ts", import.meta.url), { type: "module", name: "keeper" });
		return wrap<Opener>(worker).open(proxy(tell)) as unknown as Promise<Remote<Keeper>>;
	}
	return new Proxy({} as KeeperPort, {
		get:
			(_, name: keyof Keeper) =>
			async (...args: unknown[]) => {
				opening ??= open();
				const keeper = await opening;
				const crossing = args.map((arg) => (typeof arg === "function" ? proxy(arg) : arg));
				return (keeper[name] as unknown as (...args: unknown[]) => Promise<unknown>)(...crossing);
			},
	});
}
