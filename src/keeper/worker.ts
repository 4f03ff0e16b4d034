import { expose, proxy } from "comlink";
import { openStore } from "../store/store";
import { keeperOf } from "./keeper";

/** The database: another tab needs a newer one, or the browser found it damaged and began an empty one. */
export type Trouble = "stale" | "wiped";

const opener = {
	/** Rejects where the browser does not let the app keep data. */
	async open(tell: (trouble: Trouble) => void) {
		const store = await openStore({ onStale: () => tell("stale"), onWiped: () => tell("wiped") });
		return proxy(keeperOf(store));
	},
};

export type Opener = typeof opener;

expose(opener);
