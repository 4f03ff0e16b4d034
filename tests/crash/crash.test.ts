/** A short form of `npm run crash`. */
import { expect, inject, test } from "vitest";
import { chromium } from "../engines/chromium";
import { firefox } from "../engines/firefox";
import { killingDisk } from "./disk";
import { crashRounds } from "./rounds";

test.each([
	[chromium, 3],
	[firefox, 2],
] as const)(
	"a stop that $name called saved outlives a killed browser, once and whole, and a typed form comes back",
	async (maker, rounds) => {
		const tally = await crashRounds(maker, inject("dist"), rounds, "short", killingDisk);
		expect(tally.faults).toEqual([]);
		expect(tally.rounds).toBe(rounds);
		expect(tally.acknowledged).toBeGreaterThanOrEqual(rounds);
	},
);
