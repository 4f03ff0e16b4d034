import { expect, test } from "vitest";
import { isInvented } from "../../src/app/App";
import { demoLog } from "../../src/app/demo";
import { replay } from "../../src/domain/estimator/replay";
import { verdictOf } from "../../src/domain/warnings";
import { formatLog, parseLog } from "../../src/store/backup";

const now = Date.parse("2026-10-01T12:00:00Z");

test("demoLog is a log like any other, and out of a backup it comes the same", () => {
	const text = formatLog(demoLog(now));
	const log = parseLog(text);
	expect(log.ok && formatLog(log.value)).toBe(text);
});

test("demoLog is the same for the same time, ends before it, and is known by its id", () => {
	const { car, events } = demoLog(now);
	expect(demoLog(now)).toEqual({ car, events });
	expect(isInvented(car.id)).toBe(true);
	const times = events.map(({ at }) => Date.parse(at));
	expect(Math.max(...times)).toBeLessThan(now);
	expect(now - Math.min(...times)).toBeLessThan(220 * 86_400_000);
	expect(demoLog(now + 86_400_000).events.map(({ id }) => id)).toEqual(events.map(({ id }) => id));
});

test("demoLog ends inside the window with a modest doubt, and holds no reading that disagrees", {
	timeout: 60_000,
}, () => {
	const { car, events } = demoLog(now);
	const entries = [...replay(car, events)];
	expect(entries.map(({ surprise }) => surprise).filter(Boolean)).toEqual([]);
	const { estimate, calibration } = entries[entries.length - 1];
	expect(verdictOf(estimate, calibration)).toBe("unsure");
	const [from, to] = calibration!.window;
	const inside = estimate.dots.filter((dot) => dot >= from && dot <= to).length;
	expect(inside).toBeGreaterThanOrEqual(16);
	expect(inside).toBeLessThanOrEqual(19);
});
