/** Begins replication with the app, lets go when nobody has looked for a while, and hurries when there is a reason to. */
import type { KeeperPort } from "./keeperPort";

/** A page out of sight goes on so long: drivers look at the map in between. */
const restAfterMs = 5 * 60_000;

let watching = false;

export function watchLive(keeper: Pick<KeeperPort, "live">, report: (error: unknown) => void): void {
	const ask = (what: "wake" | "rest") => void keeper.live({ do: what }).catch(report);
	ask("wake");
	// The screen may have begun it before.
	if (watching) return;
	watching = true;
	let timer: ReturnType<typeof setTimeout> | undefined;
	document.addEventListener("visibilitychange", () => {
		clearTimeout(timer);
		if (document.visibilityState === "visible") ask("wake");
		else timer = setTimeout(() => ask("rest"), restAfterMs);
	});
	window.addEventListener("online", () => ask("wake"));
}
