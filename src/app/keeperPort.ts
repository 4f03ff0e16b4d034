/** The keeper as the screens see it, and the worker that it lives in. */
import type { Remote } from "comlink";
import type { Keeper } from "../keeper/keeper";
import type { Opener, Trouble } from "../keeper/worker";
import { addressOf } from "./scripts";

/** Every answer comes later; callbacks cross over as proxies. */
export type KeeperPort = {
	[Name in keyof Keeper]: (...args: Parameters<Keeper[Name]>) => Promise<Awaited<ReturnType<Keeper[Name]>>>;
};

/**
 * Starts the worker with the first question and opens its store; questions asked meanwhile wait. The way to talk to it loads
 * with it: the first picture needs neither.
 */
export function keeperInWorker(tell: (trouble: Trouble) => void): KeeperPort {
	let opening: ReturnType<typeof open> | null = null;
	async function open() {
		const worker = new Worker(addressOf("keeper"), { type: "module", name: "keeper" });
		try {
			const { proxy, wrap } = await import("comlink");
			const keeper = (await wrap<Opener>(worker).open(proxy(tell))) as unknown as Remote<Keeper>;
			// In a box: promises look for a `then` on what they carry, and a remote has anything one asks for.
			return { keeper, proxy };
		} catch (error) {
			// The next question tries anew: another tab may have let go by then.
			worker.terminate();
			opening = null;
			throw error;
		}
	}
	return new Proxy({} as KeeperPort, {
		get:
			(_, name: keyof Keeper) =>
			async (...args: unknown[]) => {
				opening ??= open();
				const { keeper, proxy } = await opening;
				const crossing = args.map((arg) => (typeof arg === "function" ? proxy(arg) : arg));
				return (keeper[name] as unknown as (...args: unknown[]) => Promise<unknown>)(...crossing);
			},
	});
}
