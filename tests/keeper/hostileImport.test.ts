import fc from "fast-check";
import { expect, test } from "vitest";
import { cases } from "../helpers/cases";
import { hostileFiles, soundTexts } from "../helpers/hostileLogs";
import { importingPhone } from "../helpers/importing";

const files = cases(500, 2_000);

test(`each of ${files} mangled log files is taken whole or refused whole, in words, and the store untouched`, {
	timeout: 300_000,
}, async () => {
	const phone = await importingPhone("hostile files");
	const outcomes = { imported: 0, refused: 0 };
	await fc.assert(
		fc.asyncProperty(hostileFiles, async ({ bytes }) => {
			outcomes[(await phone.take(bytes)).outcome]++;
		}),
		{ seed: 1, numRuns: files },
	);
	phone.close();
	// Files that are all refused, or all taken, would show nothing.
	expect(outcomes.imported).toBeGreaterThan(files / 20);
	expect(outcomes.refused).toBeGreaterThan(files / 2);
});

test("the sound files are taken, with a byte order mark too", async () => {
	const phone = await importingPhone("sound files");
	for (const text of soundTexts)
		for (const mark of ["", "\ufeff"])
			expect((await phone.take(Uint8Array.from(new TextEncoder().encode(mark + text)))).outcome).toBe("imported");
	phone.close();
});
