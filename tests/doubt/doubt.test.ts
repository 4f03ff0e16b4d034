/** Contradictions on simulated histories: whether a mistyped fill is called out, by its name, and a clean log is not. */
import { describe, expect, test } from "vitest";
import { doubtOf, isGrave } from "../../src/domain/doubt/doubt";
import type { Explanation } from "../../src/domain/doubt/explanation";
import { isOdd, suspectedFrom } from "../../src/domain/doubt/odd";
import { absorb, initialBelief } from "../../src/domain/estimator/absorb";
import { countingEvents, isTankEvent } from "../../src/domain/event";
import { cases } from "../helpers/cases";
import { type Fault, type Mistyped, mistyped } from "./mistyped";

const size = 2 ** 12;

interface Verdict {
	readonly called: boolean;
	readonly first: Explanation | null;
}

/** What the account says once the reading is in it: as the keeper asks, on fewer particles. */
function verdictOn({ car, events }: Mistyped): Verdict {
	const entries = countingEvents(events).filter(isTankEvent);
	const from = suspectedFrom(entries);
	let belief = initialBelief(car.id, car.tank, size);
	let start = belief;
	const suspected = [];
	for (const [i, event] of entries.entries()) {
		if (i === from) start = belief;
		const absorbed = absorb(belief, event, car.tank, size);
		belief = absorbed.belief;
		if (i >= from) suspected.push(absorbed);
	}
	if (!suspected.some(isOdd)) return { called: false, first: null };
	const bought = new Map(
		entries.flatMap((entry) => (entry.kind === "fill" ? [[entry.product.id, entry.product]] : [])),
	);
	const doubt = doubtOf(start, entries.slice(from), [...bought.values()], car.tank);
	return { called: isGrave(doubt), first: doubt.explanations[0]?.explanation ?? null };
}

/** How many of so many simulated cases are called out, and how many of all have the true explanation first. */
function tried(fault: Fault, count: number) {
	let [called, first] = [0, 0];
	for (let n = 0; n < count; n++) {
		const history = mistyped(n, fault);
		const verdict = verdictOn(history);
		if (verdict.called) called++;
		if (verdict.called && isTrue(verdict.first, history)) first++;
	}
	console.info(`${fault}: of ${count} called out ${called}, the true explanation first ${first}`);
	return { called: called / count, first: first / count };
}

function isTrue(explanation: Explanation | null, { really, fault }: Mistyped): boolean {
	if (!explanation || explanation.event !== really?.id) return false;
	if (fault === "product") return explanation.kind === "product" && explanation.product.id === really.product.id;
	return explanation.kind === "amount" && Math.abs(explanation.litres / really.litres - 1) < 1e-9;
}

describe("A mistyped fill is called out within one later reading, and by its name,", () => {
	test("where the decimal point slipped and ten times as much was typed", () => {
		const { called, first } = tried("tenfold", cases(5, 20));
		expect(called).toBeGreaterThanOrEqual(0.9);
		expect(first).toBeGreaterThanOrEqual(0.7);
	}, 300_000);

	test("where another product was chosen", () => {
		const { called, first } = tried("product", cases(25, 150));
		expect(called).toBeGreaterThanOrEqual(0.9);
		expect(first).toBeGreaterThanOrEqual(0.7);
	}, 300_000);
});

test("A clean log is called out in fewer than 1 of 50 cases", () => {
	const clean = cases(110, 300);
	const called = Array.from({ length: clean }, (_, n) => verdictOn(mistyped(n, null))).filter(
		(verdict) => verdict.called,
	);
	console.info(`clean: of ${clean} called out ${called.length}`);
	expect(called.length / clean).toBeLessThan(1 / 50);
}, 300_000);
