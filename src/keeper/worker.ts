import { expose, proxy } from "comlink";
import { copyingTo } from "../store/copying";
import { openStore } from "../store/store";
import { keeperOf } from "./keeper";

/** The database: another tab needs a newer one, or the browser found it damaged and began an empty one. */
export type Trouble = "stale" | "wiped";

const opener = {
	/** Rejects where the browser does not let the app keep data. */
	async open(tell: (trouble: Trouble) => void) {
		const copying = copyingTo(async () => (await import("../store/fileSystem")).rescueHere("heeltap"));
		const [onStale, onWiped] = [() => tell("stale"), () => tell("wiped")];
		const store = await openStore({ onStale, onWiped, onWritten: copying.note });
		return proxy(keeperOf(store, copying));
	},
};

export type Opener = typeof opener;

expose(opener);
