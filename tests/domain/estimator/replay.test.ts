import { describe, expect, test } from "vitest";
import { type Account, advanced, fingerprints, openAccount, replay } from "../../../src/domain/estimator/replay";
import { countingEvents, type LogEvent } from "../../../src/domain/event";
import { bitsOf } from "../../helpers/bitsOf";
import { aCalibration, aCar, aFill, aFlash, aLog, aPumpReading, aStart, aTankReading, aVoid } from "../../helpers/logs";

const { car, events } = aLog();
const counting = countingEvents(events);

/** The account after 0, 1, 2 … of the events that count. */
const accounts: Account[] = [openAccount(car)];
for (const event of counting) accounts.push(advanced(accounts.at(-1)!, event, car).account);

describe("replay(car, events)", () => {
	const entries = [...replay(car, events)];

	test("gives an entry for every event that counts and concerns the tank, in order", () => {
		expect(entries.map(({ event }) => event.id)).toEqual(["start", "fill", "pump", "tank", "trim"]);
	});

	test("gives the same numbers every time, to the last bit", () => {
		expect([...replay(car, events)]).toEqual(entries);
	});

	test("begins with the car's first calibration and follows what is flashed", () => {
		const e50 = aCalibration({ id: "e50", window: [0.45, 0.55] });
		const twice = aCar({ calibrations: [aCalibration(), e50] });
		const flash = aFlash({ id: "flash", calibration: "e50", at: aTankReading().at });
		const found = [...replay(twice, [aStart(), aFill(), flash, aTankReading({ id: "later" })])];
		expect(found.map(({ calibration }) => calibration?.id)).toEqual(["e30", "e30", "e50"]);
	});

	test("leaves the calibration as it is where an unknown one is flashed", () => {
		const found = [...replay(car, [aFlash({ calibration: "none", at: aStart().at, id: "a flash" }), aStart()])];
		expect(found[0].calibration?.id).toBe("e30");
	});

	test("knows no chances without a calibration", () => {
		const [{ estimate }] = replay(aCar({ calibrations: [] }), [aStart()]);
		expect([estimate.below, estimate.above]).toEqual([null, null]);
	});

	test("gives nothing for a log in which nothing counts", () => {
		expect([...replay(car, [])]).toEqual([]);
		expect([...replay(car, [aStart(), aVoid({ target: "start" })])]).toEqual([]);
	});
});

describe("An account put away as a structured clone", () => {
	test("goes on as if it had never been put away, wherever it was cut", () => {
		const whole = [...replay(car, events)];
		for (let cut = 0; cut <= counting.length; cut++) {
			let account = structuredClone(accounts[cut]);
			const rest = [];
			for (const event of counting.slice(cut)) {
				const step = advanced(account, event, car);
				account = step.account;
				if (step.entry) rest.push(step.entry);
			}
			expect(rest).toEqual(whole.slice(whole.length - rest.length));
			expect(bitsOf(account)).toBe(bitsOf(accounts.at(-1)));
		}
	});

	test("knows its position and the fingerprint of what is in it", () => {
		const prints = fingerprints(car, counting);
		expect(accounts.map(({ position }) => position)).toEqual([...prints.keys()]);
		expect(accounts.map(({ fingerprint }) => fingerprint)).toEqual(prints);
	});
});

describe("fingerprints(…)", () => {
	test("differ with any event, with their order, and with tank or calibration, and not with the car's name", () => {
		const log = [aStart(), aFill(), aPumpReading()];
		const print = (own = car, from: LogEvent[] = log) => fingerprints(own, from).at(-1);
		const others = [
			print(car, [aStart(), aFill({ litres: 15.6 }), aPumpReading()]),
			print(car, [aFill(), aStart(), aPumpReading()]),
			print(car, [aStart(), aFill()]),
			print(aCar({ tank: { capacityL: 59 } })),
			print(aCar({ calibrations: [aCalibration({ window: [0.26, 0.35] })] })),
			print(aCar({ id: "another" })),
		];
		expect(new Set([print(), ...others]).size).toBe(others.length + 1);
		expect(print(aCar({ name: "renamed" }))).toBe(print());
		for (const one of others) expect(Number.isSafeInteger(one)).toBe(true);
	});
});
