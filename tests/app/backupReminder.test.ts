import fc from "fast-check";
import { expect, test } from "vitest";
import { type Backup, entriesSince, type Postponed } from "../../src/app/backupNotes";
import { reminderFor } from "../../src/app/backupReminder";
import { lastBackupWords, missingWords, riskWords } from "../../src/app/backupWords";

const now = Date.parse("2026-06-01T12:00:00Z");
const daysAgo = (days: number) => new Date(now - days * 86_400_000).toISOString();
const backup = (entries: number, days: number): Backup => ({ at: daysAgo(days), entries, how: "saved" });
const later = (entries: number, days: number): Postponed => ({ at: daysAgo(days), entries });

interface Row {
	readonly entries: number;
	/** Days since the log began. */
	readonly age?: number;
	readonly last?: Backup;
	readonly postponed?: Postponed;
	readonly kept?: boolean | null;
	readonly stuck?: boolean;
}

function reminder({ entries, age = 1, last, postponed, kept = true, stuck = false }: Row) {
	const notes = { last: last ?? null, postponed: postponed ?? null };
	return reminderFor({ notes, entries, begun: now - age * 86_400_000, kept, stuck }, now);
}

const rows: readonly (readonly [why: string, row: Row, said: "quiet" | "strong" | null])[] = [
	["an empty log", { entries: 0, age: 400 }, null],
	["a log of three entries, however old", { entries: 3, age: 400, kept: false }, null],
	["few entries of the last days", { entries: 9, age: 29 }, null],
	["ten entries that never left", { entries: 10 }, "quiet"],
	["few entries of a month", { entries: 4, age: 30 }, "quiet"],
	["thirty entries", { entries: 30 }, "strong"],
	["twenty-nine", { entries: 29, age: 89 }, "quiet"],
	["few entries of ninety days", { entries: 4, age: 90 }, "strong"],
	["fifteen entries that the browser may clear", { entries: 15, kept: false }, "strong"],
	["fourteen of them", { entries: 14, age: 44, kept: false }, "quiet"],
	["few of them, 45 days old", { entries: 4, age: 45, kept: false }, "strong"],
	["fifteen where the browser does not say", { entries: 15, kept: null }, "strong"],
	["a backup of today", { entries: 100, age: 400, last: backup(100, 0) }, null],
	["an old backup of all there is", { entries: 100, age: 400, last: backup(100, 300), kept: false }, null],
	["nine entries since the backup", { entries: 100, age: 400, last: backup(91, 29) }, null],
	["ten entries since the backup", { entries: 100, age: 400, last: backup(90, 1) }, "quiet"],
	["one entry since a backup of a month ago", { entries: 100, age: 400, last: backup(99, 30) }, "quiet"],
	["one entry since a backup of ninety days ago", { entries: 100, age: 400, last: backup(99, 90) }, "strong"],
	["thirty entries since the backup", { entries: 100, age: 400, last: backup(70, 1) }, "strong"],
	["a backup with more than the log has", { entries: 40, age: 10, last: backup(41, 1) }, "strong"],
	["a clock that was set back", { entries: 20, age: -50, last: backup(12, -50) }, null],
	["a clock that was set back, and ten entries", { entries: 22, age: -50, last: backup(12, -50) }, "quiet"],
	["“Not now” of yesterday", { entries: 35, postponed: later(31, 1) }, null],
	["“Not now” ten entries ago", { entries: 41, postponed: later(31, 1) }, "strong"],
	["“Not now” a month ago", { entries: 35, age: 100, postponed: later(31, 30) }, "strong"],
	["“Not now”, and a backup after it", { entries: 70, last: backup(35, 5) }, "strong"],
	["a file that should write itself and lacks one entry", { entries: 40, last: backup(39, 1), stuck: true }, "quiet"],
	["such a file that lacks nothing", { entries: 40, last: backup(40, 1), stuck: true }, null],
	["such a file, “Not now”", { entries: 40, last: backup(39, 1), stuck: true, postponed: later(39, 1) }, null],
	["such a file that lacks thirty", { entries: 40, last: backup(10, 1), stuck: true }, "strong"],
];

test.each(rows)("reminderFor() judges %s", (_, row, said) => {
	expect(reminder(row)).toBe(said);
});

const rank = { none: 0, quiet: 1, strong: 2 };
const rankOf = (row: Row) => rank[reminder(row) ?? "none"];

test("reminderFor() never says less for one more entry, one more day or a browser that has promised nothing", () => {
	const row = fc.record({
		entries: fc.nat(120),
		age: fc.nat(200),
		last: fc.option(fc.record({ entries: fc.nat(120), days: fc.nat(200) }), { nil: undefined }),
		stuck: fc.boolean(),
	});
	fc.assert(
		fc.property(row, ({ last: made, ...drawn }) => {
			// A backup of more than the log is another matter, see the table.
			const last = made && backup(Math.min(made.entries, drawn.entries), made.days);
			const older = made && backup(Math.min(made.entries, drawn.entries), made.days + 1);
			const is = { ...drawn, ...(last && { last }) };
			expect(rankOf({ ...is, entries: is.entries + 1 })).toBeGreaterThanOrEqual(rankOf(is));
			expect(rankOf({ ...is, age: is.age + 1, ...(older && { last: older }) })).toBeGreaterThanOrEqual(rankOf(is));
			expect(rankOf({ ...is, kept: false })).toBeGreaterThanOrEqual(rankOf(is));
			expect(rankOf({ ...is, last: backup(is.entries, 0) })).toBe(0);
		}),
	);
});

test("entriesSince() counts what is in no backup", () => {
	expect(entriesSince(null, 12)).toBe(12);
	expect(entriesSince(backup(10, 3), 12)).toBe(2);
	expect(entriesSince(backup(12, 3), 12)).toBe(0);
	expect(entriesSince(backup(13, 3), 12)).toBe(12);
});

const noted = (last: Backup | null) => ({ last, postponed: null });

test("what is said of the last backup is true of one entry and of many", () => {
	expect(lastBackupWords(noted(null), 1, now)).toBe("No backup has left this phone: 1 entry is here only.");
	expect(lastBackupWords(noted(null), 5, now)).toBe("No backup has left this phone: 5 entries are here only.");
	expect(lastBackupWords(noted(backup(5, 3)), 5, now)).toBe(
		"Last backup: saved 3 days ago, with 5 entries. Nothing was added since.",
	);
	expect(lastBackupWords(noted({ ...backup(5, 3), how: "sent" }), 6, now)).toBe(
		"Last backup: sent 3 days ago, with 5 entries. 1 entry since then is here only.",
	);
	expect(lastBackupWords(noted({ ...backup(5, 3), how: "opened" }), 7, now)).toBe(
		"Last backup: a file that was opened here 3 days ago, with 5 entries. 2 entries since then are here only.",
	);
	expect(lastBackupWords(noted({ ...backup(5, 3), how: "written" }), 4, now)).toMatch(
		/written 3 days ago, with 5 entries\. That is more than the 4 here: open it/,
	);
	expect(missingWords(noted(null), 5)).toBe("5 entries of the log are in no backup.");
	expect(missingWords(noted(backup(5, 3)), 6)).toMatch(/^1 entry since the backup of .*2026.* is in none\.$/);
});

test("why a backup is worth it is said by what the browser may do", () => {
	expect(riskWords(true, false)).not.toMatch(/browser/);
	expect(riskWords(false, false)).toMatch(/may clear it when space runs short/);
	expect(riskWords(null, false)).toMatch(/may clear it when space runs short/);
	expect(riskWords(true, true)).toMatch(/seven days of use without a visit/);
});
