/** Changes that were read and found to change nothing that anyone could see, so that no test can catch them. */
export interface Equivalent {
	readonly file: string;
	/** The changed line, without its indentation. */
	readonly line: string;
	/** What stands in its place, or in that of a part of it. */
	readonly replacement: string;
	readonly why: string;
}

export const equivalent: readonly Equivalent[] = [
	{
		file: "src/domain/readings/obd.ts",
		line: "return ok({ byte, as, inHex: hex <= 255 && hex !== byte ? hex : null });",
		replacement: "hex < 255",
		why: "255 is FF, and has letters: it was never decimal",
	},
];
