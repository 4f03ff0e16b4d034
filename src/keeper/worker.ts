import { expose, proxy } from "comlink";
import { openStore } from "../store/store";
import { keeperOf } from "./keeper";

const opener = {
	/** Rejects where the browser does not let the app keep data. */
	open: async () => proxy(keeperOf(await openStore())),
};

export type Opener = typeof opener;

expose(opener);
