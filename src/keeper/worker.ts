import { expose, proxy } from "comlink";
import { openStore } from "../store/store";
import { keeperOf } from "./keeper";

const opener = {
	/** Rejects where the browser does not let the app keep data. */
	async open() {
		const store = await openStore();
		// Here before the first save, which may come without a network.
		setTimeout(() => import("../store/checks").catch(() => {}), 1000);
		return proxy(keeperOf(store));
	},
};

export type Opener = typeof opener;

expose(opener);
