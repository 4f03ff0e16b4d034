/**
 * Saves stops and ends the browser at seeded moments, again and again on the same phone: what the screen said was saved
 * must be there afterwards, once and whole, and what was typed must be in the form.
 */
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Seeds, seedsFor, uniform } from "../../src/domain/random";
import { formatLog } from "../../src/store/backup";
import { openSite, type Site } from "../e2e/site";
import type { Engine, EngineMaker } from "../engines/engine";
import { type Person, personAt } from "../engines/person";
import { aCar, aStart } from "../helpers/logs";
import type { Disk } from "./disk";
import { formOnDisk, type StoredFill, saveStop, storedFills, typeStop } from "./form";

export interface Tally {
	rounds: number;
	/** Stops of two fills that the screen called saved. */
	acknowledged: number;
	/** Forms known to be on the disk when the end came. */
	typed: number;
	/** Ends between the tap on "Save" and the word "Saved", by what was there afterwards: the stop, or the form. */
	savedInFlight: number;
	formInFlight: number;
	/** Ends after which the database had lost saved stops, and how many. */
	damaged: number;
	gone: number;
	/** Those among the stops that the app's own repair did not bring back. */
	lost: number;
	/** What must not be, in words. */
	readonly faults: string[];
}

/** A stop by its number: its amounts, L, tell it from all others. */
const amountsOf = (stop: number) => [1, 2].map((whole) => String((whole * 1000 + stop) / 1000));
/** So many stops fit between two whole litres; the log stays short enough to be quick. */
const stopsAtMost = 150;

export async function crashRounds(maker: EngineMaker, dist: string, rounds: number, seed: string, newDisk: () => Disk) {
	const tally: Tally = {
		rounds: 0,
		acknowledged: 0,
		typed: 0,
		savedInFlight: 0,
		formInFlight: 0,
		damaged: 0,
		gone: 0,
		lost: 0,
		faults: [],
	};
	const seeds = seedsFor(seed);
	const site = await openSite(dist);
	try {
		while (tally.rounds < rounds) {
			const disk = newDisk();
			try {
				await onePhone(maker, site, disk, seeds, rounds, tally);
			} finally {
				disk.remove();
			}
		}
	} finally {
		await site.stop();
	}
	return tally;
}

/** What is known to be on a phone. */
interface Known {
	/** Stops that the screen called saved. */
	readonly saved: Set<number>;
	/** The stop that was under way when the browser ended, and how far it had come. */
	underWay: { readonly stop: number; readonly at: "typing" | "typed" | "saving" } | null;
}

async function onePhone(maker: EngineMaker, site: Site, disk: Disk, seeds: Seeds, rounds: number, tally: Tally) {
	const known: Known = { saved: new Set(), underWay: null };
	let stop = 0;
	let savingMs = 300;
	let engine = await maker.open(disk.profile);
	try {
		await setUp(engine, site, disk);
		while (tally.rounds < rounds && stop < stopsAtMost) {
			for (let before = Math.floor(uniform(seeds) * 4); before > 0; before--) {
				await typeToDisk(engine, stop);
				savingMs = await timed(() => engine.run(saveStop));
				known.saved.add(stop++);
				tally.acknowledged++;
			}
			const share = uniform(seeds);
			const work = goOn(engine, stop, uniform(seeds) < 0.25, known);
			await work.begun;
			// Some ends come after the last word: right after it data is in most danger.
			await new Promise((done) => setTimeout(done, share * 1.5 * savingMs));
			await disk.cut(engine);
			await work.done;
			if (known.saved.has(stop)) tally.acknowledged++;
			else if (known.underWay?.at === "typed") tally.typed++;
			engine = await maker.open(disk.profile);
			const whole = await settle(engine, site, known, tally).catch((error: Error) => {
				if (!/has been closed|browser is gone/.test(error.message)) throw error;
				tally.damaged++;
				tally.faults.push(`round ${tally.rounds}: the browser died of what the disk had kept`);
				return false;
			});
			stop++;
			tally.rounds++;
			// What else such a phone would lose is the same loss.
			if (!whole) return;
		}
	} catch (cause) {
		throw new Error(`in round ${tally.rounds}; the page logged: ${(await engine.errors()).join("; ")}`, { cause });
	} finally {
		await engine.kill();
	}
}

/** Types a stop and saves it, as far as the browser lives; notes what the browser has said. */
function goOn(engine: Engine, stop: number, typingOnly: boolean, known: Known) {
	known.underWay = { stop, at: "typing" };
	const typed = typeToDisk(engine, stop).then(() => {
		known.underWay = { stop, at: typingOnly ? "typed" : "saving" };
	});
	const saved = typed.then(async () => {
		if (typingOnly) return;
		await engine.run(saveStop);
		known.saved.add(stop);
	});
	return {
		/** The end may come from here on. */
		begun: typingOnly ? Promise.resolve() : typed,
		done: saved.catch(() => {}),
	};
}

/** Compares what is there with what is known, and empties the form. False where saved stops are gone: the phone is done. */
async function settle(engine: Engine, site: Site, known: Known, tally: Tally): Promise<boolean> {
	const person = personAt(engine);
	const fault = (text: string) => tally.faults.push(`round ${tally.rounds}: ${text}`);
	await engine.go(`${site.origin}/#/fill`);
	const button = await person.see("button", /^(Save( |$)|Start the account)/);
	const { saved, underWay } = known;
	const counts = countsOf(await engine.run(storedFills));
	for (const error of await engine.errors())
		if (/lost hold of|does not answer|could not write/.test(error)) fault(`after the end the app said: ${error}`);
	const carIsGone = button === "Start the account";
	if (carIsGone || [...saved].some((stop) => !counts.has(stop))) {
		const missing = (from: ReadonlyMap<number, unknown>) => [...saved].filter((stop) => !from.has(stop)).length;
		tally.damaged++;
		tally.gone += missing(counts);
		const told = await repaired(person);
		const lost = missing(countsOf(await engine.run(storedFills)));
		tally.lost += lost;
		const before = `${carIsGone ? "the car and " : ""}${missing(counts)} of ${saved.size} saved stops were gone`;
		if (lost > 0 || told === unsaid) fault(`${before}, ${lost} for good: ${told}`);
		return false;
	}
	for (const [stop, [first, second]] of counts) {
		if (first !== second) fault(`half of stop ${stop} is there`);
		if (first > 1 || second > 1) fault(`stop ${stop} is there more than once`);
		if (saved.has(stop)) continue;
		if (stop !== underWay?.stop || underWay.at !== "saving") fault(`stop ${stop} is there, and nobody saved it`);
		tally.savedInFlight++;
		saved.add(stop);
	}
	if (!underWay) return true;
	const [first, second] = amountsOf(underWay.stop);
	const whole = `Save ${first} L + ${second} L`;
	if (saved.has(underWay.stop)) {
		if (button !== "Save") fault(`the form of a saved stop is still open: ${button}`);
	} else if (underWay.at === "typing") {
		if (!["Save", `Save ${first} L`, whole].includes(button)) fault(`a form that nobody typed: ${button}`);
	} else {
		if (button !== whole) fault(`stop ${underWay.stop} was ${underWay.at}, and its form came back as “${button}”`);
		if (underWay.at === "saving") tally.formInFlight++;
	}
	if (button !== "Save") {
		await person.tap("button", "Start this form over");
		await untilOnDisk(engine, "");
	}
	return true;
}

/** Resolves once the whole form is on the disk. */
async function typeToDisk(engine: Engine, stop: number): Promise<void> {
	await engine.run(typeStop, amountsOf(stop));
	await untilOnDisk(engine, amountsOf(stop).join());
}

async function untilOnDisk(engine: Engine, form: string): Promise<void> {
	for (const deadline = Date.now() + 60_000; (await engine.run(formOnDisk)) !== form; ) {
		if (Date.now() > deadline) throw new Error(`the form on the disk never became “${form}”`);
		await new Promise((done) => setTimeout(done, 2));
	}
}

const unsaid = "the app said nothing";

/** Follows the app where it says that something is missing. */
async function repaired(person: Person): Promise<string> {
	try {
		await person.tap("button", "See what is missing");
	} catch {
		return unsaid;
	}
	await person.tap("button", /^(Bring everything back|Bring back what there is|Go on without it)$/);
	return person.read(/^(Back: |The log is in order again)/);
}

/** How many first and second fills of each stop there are. */
function countsOf(fills: readonly StoredFill[]): Map<number, [number, number]> {
	const counts = new Map<number, [number, number]>();
	for (const { litres } of fills) {
		const thousandths = Math.round(litres * 1000);
		const of = counts.get(thousandths % 1000) ?? [0, 0];
		of[Math.floor(thousandths / 1000) - 1]++;
		counts.set(thousandths % 1000, of);
	}
	return counts;
}

/** A phone with a car and no calibration: nothing is asked before a stop is saved. */
async function setUp(engine: Engine, site: Site, disk: Disk): Promise<void> {
	const person = personAt(engine);
	const log = join(disk.profile, "car.json");
	writeFileSync(log, formatLog({ car: aCar({ calibrations: [] }), events: [aStart()] }));
	await engine.go(`${site.origin}/#/setup`);
	await person.see("heading", "Been here before?");
	await engine.choose(log);
	await person.see("link", "Enter the calibration");
	await engine.go(`${site.origin}/#/car`);
	await person.tap("radio", "Litres");
	await person.tap("button", "Save the car");
	await person.read(/^The car is saved\.$/);
	await person.untilOffline();
}

async function timed(work: () => Promise<unknown>): Promise<number> {
	const began = performance.now();
	await work();
	return performance.now() - began;
}
