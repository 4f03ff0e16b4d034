/** Logs as released versions wrote them. They are never edited: what one version wrote, every later one reads. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { replay } from "../../src/domain/estimator/replay";
import { formatLog, parseLog } from "../../src/store/backup";
import { saidOf } from "../helpers/sentences";

const folder = join(import.meta.dirname, "../fixtures");

test.each(readdirSync(folder))("%s is read, reckoned, and written again unchanged", (name) => {
	const text = readFileSync(join(folder, name), "utf8");
	const log = parseLog(text);
	if (!log.ok) throw new Error(saidOf(log.error));
	expect(formatLog(log.value)).toBe(text);
	const entries = [...replay(log.value.car, log.value.events)];
	expect(entries.length).toBeGreaterThan(0);
	for (const { estimate } of entries) expect(estimate.median).toBeGreaterThan(0);
});
