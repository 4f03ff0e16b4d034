/** A browser of each kind on the built app, with a folder and a server of its own. */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { newFolder } from "../e2e/harness";
import { openSite, type Site } from "../e2e/site";
import { chromium } from "./chromium";
import type { Engine, EngineMaker } from "./engine";
import { firefox } from "./firefox";
import { type Person, personAt } from "./person";
import { webkit } from "./webkit";

export const engines: readonly EngineMaker[] = [chromium, firefox, webkit];

export interface World {
	readonly folder: string;
	readonly site: Site;
	readonly engine: Engine;
	readonly person: Person;
	/** Kills the browser and starts it anew on what it has stored. */
	restart(): Promise<World>;
	close(): Promise<void>;
}

export async function openWorld(maker: EngineMaker, dist: string): Promise<World> {
	const { path, remove } = newFolder();
	const site = await openSite(maker.served(dist, path));
	const profile = join(path, "profile");
	mkdirSync(profile);
	return begin();

	async function begin(): Promise<World> {
		const engine = await maker.open(profile);
		return {
			folder: path,
			site,
			engine,
			person: personAt(engine),
			async restart() {
				await engine.kill();
				return begin();
			},
			async close() {
				await engine.close();
				await site.stop();
				remove();
			},
		};
	}
}
