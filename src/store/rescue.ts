/** A second copy of everything, in files of the browser's own file system. Written after every save, read when something is missing. */
import { compactLines, foldLines, lineOf, readLines } from "./journal";
import type { Holdings } from "./snapshot";
import type { InTurn } from "./turns";
import type { Written } from "./written";

/** A folder. What is appended is on the disk when it resolves. */
export interface Folder {
	names(): Promise<readonly string[]>;
	read(name: string): Promise<string>;
	append(name: string, text: string): Promise<void>;
	remove(name: string): Promise<void>;
}

export interface Rescue {
	read(): Promise<Holdings>;
	write(written: readonly Written[]): Promise<void>;
}

/** Characters of superfluous lines that are let be. */
const slack = 64_000;

/** `inTurn` keeps tabs from writing at once. */
export function rescueIn(folder: Folder, inTurn: InTurn): Rescue {
	async function names(): Promise<string[]> {
		return [...(await folder.names())].filter((name) => numberOf(name) > 0).sort((a, b) => numberOf(a) - numberOf(b));
	}
	async function makeAnew(old: readonly string[], text: string): Promise<void> {
		await folder.append(fileName(numberOf(old[old.length - 1]) + 1), text);
		for (const name of old) await folder.remove(name);
	}
	async function read(): Promise<Holdings> {
		const all = await names();
		// An older file is left only where the app was killed while it made the newer one: together they are whole.
		const texts = await Promise.all(all.map((name) => folder.read(name)));
		const lines = texts.flatMap(readLines);
		const holdings = foldLines(lines);
		const compact = compactLines(holdings);
		const length = texts.reduce((sum, text) => sum + text.length, 0);
		const due =
			all.length > 1 || length > 2 * compact.length + slack || lines.some((line) => isOutlived(line, holdings));
		// Without the room for it the old ones have to do.
		if (due) await makeAnew(all, compact).catch(() => {});
		return holdings;
	}
	return {
		read: () => inTurn(read),
		write: (written) =>
			inTurn(async () => {
				await folder.append((await names()).at(-1) ?? fileName(1), written.map(lineOf).join(""));
				if (written.some((line) => "head" in line && line.head.car === null)) await read();
			}),
	};
}

/** Whether a line tells of a car before it was removed: what was removed for good must not stay in a file. */
function isOutlived(line: Written, { cars }: Holdings): boolean {
	return "carId" in line && line.head.rev < (cars.get(line.carId)?.head?.since ?? 0);
}

function fileName(number: number): string {
	return `journal-${number}`;
}

function numberOf(name: string): number {
	return Number(/^journal-(\d+)$/.exec(name)?.[1] ?? 0);
}
