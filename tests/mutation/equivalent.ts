/** Changes that were read and found to change nothing that anyone could see, so that no test can catch them. */
export interface Equivalent {
	readonly file: string;
	/** The line that it begins in, without its indentation. */
	readonly line: string;
	/** The code, an arrow, and what stands in its place. */
	readonly change: string;
	readonly why: string;
}

export const equivalent: readonly Equivalent[] = [
	{
		file: "src/domain/readings/obd.ts",
		line: "return ok({ byte, as, inHex: hex <= 255 && hex !== byte ? hex : null });",
		change: "hex <= 255 → hex < 255",
		why: "255 is FF, and has letters: it was never decimal",
	},
	{
		file: "src/domain/elementary.ts",
		line: "if (x < 2.2250738585072014e-308) return log(x * 18014398509481984) - 37.42994775023705;",
		change: "x < 2.2250738585072014e-308 → x <= 2.2250738585072014e-308",
		why: "the least normal number comes out the same to the last bit either way",
	},
	{
		file: "src/domain/elementary.ts",
		line: "return q < 0 ? -z : z;",
		change: "q < 0 → q <= 0",
		why: "the middle, where q is 0, was answered above",
	},
	{
		file: "src/domain/doubt/doubt.ts",
		line: "for (let i = first; i < events.length && likelihood > 0; i++) {",
		change: "i < events.length → i <= events.length",
		why: "a step without an entry changes nothing",
	},
	{
		file: "src/domain/doubt/doubt.ts",
		line: "for (let i = first; i < events.length && likelihood > 0; i++) {",
		change: "likelihood > 0 → true",
		why: "it only spares work: times nothing, the rest is nothing",
	},
	{
		file: "src/domain/doubt/doubt.ts",
		line: "for (let i = first; i < events.length && likelihood > 0; i++) {",
		change: "likelihood > 0 → likelihood >= 0",
		why: "it only spares work: times nothing, the rest is nothing",
	},
	{
		file: "src/domain/doubt/suspects.ts",
		line: 'if (event.kind === "fill" && before.some((other) => other.kind === "fill" && other.stop === event.stop)) return [];',
		change: 'event.kind === "fill" → true',
		why: "for the types: no look at the gauge has the stop of a fill",
	},
	{
		file: "src/domain/doubt/suspects.ts",
		line: 'if (event.kind === "fill" && before.some((other) => other.kind === "fill" && other.stop === event.stop)) return [];',
		change: 'other.kind === "fill" → true',
		why: "for the types: only fills have a stop",
	},
	{
		file: "src/domain/datalog/steady.ts",
		line: "if (values[i] < least) least = values[i];",
		change: "values[i] < least → values[i] <= least",
		why: "an equal value in its place is the same value",
	},
	{
		file: "src/domain/datalog/steady.ts",
		line: "if (values[i] > most) most = values[i];",
		change: "values[i] > most → values[i] >= most",
		why: "an equal value in its place is the same value",
	},
	{
		file: "src/domain/plan/shown.ts",
		line: "return sum > 1 ? shown.map(({ chance, likelihood }) => ({ chance: chance / sum, likelihood })) : shown;",
		change: "sum > 1 → sum >= 1",
		why: "what is divided by 1 stays what it is",
	},
	{
		file: "src/domain/plan/pouring.ts",
		line: "return total <= room.sure + tiny;",
		change: "total <= room.sure + tiny → total < room.sure + tiny",
		why: "no amount differs from another by just a billionth of a litre",
	},
	{
		file: "src/domain/plan/pouring.ts",
		line: "return amount > tiny && amount >= handling.minimum - tiny;",
		change: "amount > tiny → amount >= tiny",
		why: "no amount differs from another by just a billionth of a litre",
	},
	{
		file: "src/domain/plan/pouring.ts",
		line: "return amount > tiny && amount >= handling.minimum - tiny;",
		change: "amount >= handling.minimum - tiny → amount > handling.minimum - tiny",
		why: "no amount differs from another by just a billionth of a litre",
	},
	{
		file: "src/domain/plan/replanning.ts",
		line: "const left = tallies.filter((_, plan) => plans[plan].needs <= sure);",
		change: "plans[plan].needs <= sure → plans[plan].needs < sure",
		why: "no amount differs from another by just a millionth of a litre",
	},
	{
		file: "src/domain/estimator/leg.ts",
		line: 'odometer: "unusable",',
		change: '"unusable" → ""',
		why: "any word will do that is neither a number nor null",
	},
	{
		file: "src/domain/estimator/resample.ts",
		line: "for (let i = 0; i < size; i++) result[i] = from[parent[i]];",
		change: "i < size → i <= size",
		why: "beyond its end a typed array keeps nothing",
	},
	{
		file: "src/domain/why/known.ts",
		line: "common += weight[i] * (x[i] - middle) * (y[i] - mean);",
		change: "x[i] - middle → x[i] + middle",
		why: "the deviations of y add up to nothing, so does what this adds",
	},
	{
		file: "src/domain/why/known.ts",
		line: "common += weight[i] * (x[i] - middle) * (y[i] - mean);",
		change: "y[i] - mean → y[i] + mean",
		why: "the deviations of x add up to nothing, so does what this adds",
	},
	{
		file: "src/domain/why/known.ts",
		line: "family += weight[i] * (residual[i] - mean);",
		change: "family += weight[i] * (residual[i] - mean) → family -= weight[i] * (residual[i] - mean)",
		why: "it is squared",
	},
	{
		file: "src/domain/why/known.ts",
		line: "if (k + 1 < members.length && x[members[k + 1]] === x[i]) continue;",
		change: "k + 1 < members.length → true",
		why: "behind the last there is no x, which equals none",
	},
	{
		file: "src/domain/why/known.ts",
		line: "if (k + 1 < members.length && x[members[k + 1]] === x[i]) continue;",
		change: "k + 1 < members.length → k + 1 <= members.length",
		why: "behind the last there is no x, which equals none",
	},
	{
		file: "src/domain/why/trace.ts",
		line: "for (let i = 0; i < result.length; i++) {",
		change: "i < result.length → i <= result.length",
		why: "a typed array takes nothing behind its end",
	},
];
