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
	{
		file: "src/domain/elementary.ts",
		line: "if (x < 2.2250738585072014e-308) return log(x * 18014398509481984) - 37.42994775023705;",
		replacement: "x <= 2.2250738585072014e-308",
		why: "the least normal number comes out the same to the last bit either way",
	},
	{
		file: "src/domain/elementary.ts",
		line: "return q < 0 ? -z : z;",
		replacement: "q <= 0",
		why: "the middle, where q is 0, was answered above",
	},
];
