/** The part of jstat that the tests compare with; the package brings no types. */
declare module "jstat" {
	interface Distribution {
		cdf(x: number, first: number, second: number): number;
		inv(chance: number, first: number, second: number): number;
		pdf(x: number, first: number, second: number): number;
	}
	export const jStat: { readonly normal: Distribution; readonly beta: Distribution; readonly uniform: Distribution };
}
