/** Several quantities taken together as the one combination of them that says most of the content. */
import type { Belief, Column } from "../estimator/belief";
import { momentsOf } from "./known";

/** Against columns that say the same: a billionth of each one's own variance is added. */
const ridge = 1e-9;

/** The weighted least-squares fit of y by the columns: what is known of y if all of them are known, as far as lines go. */
export function bestCombination(columns: readonly Column[], y: Column, { weight }: Pick<Belief, "weight">): Column {
	const moments = columns.map((column) => momentsOf(column, weight));
	const useful = columns.flatMap((column, j) =>
		moments[j].variance > 0 ? [{ column, mean: moments[j].mean, sd: Math.sqrt(moments[j].variance) }] : [],
	);
	const mean = momentsOf(y, weight).mean;
	const size = useful.length;
	const standard = useful.map(({ column, mean, sd }) => Float64Array.from(column, (value) => (value - mean) / sd));
	const product = (a: ArrayLike<number>, b: (i: number) => number) => {
		let sum = 0;
		for (let i = 0; i < y.length; i++) sum += weight[i] * a[i] * b(i);
		return sum;
	};
	const normal = standard.map((a, j) => standard.map((b, k) => product(a, (i) => b[i]) * (j === k ? 1 + ridge : 1)));
	const slopes = solved(
		normal,
		standard.map((a) => product(a, (i) => y[i] - mean)),
	);
	const fit = new Float32Array(y.length);
	for (let j = 0; j < size; j++) for (let i = 0; i < fit.length; i++) fit[i] += slopes[j] * standard[j][i];
	return fit;
}

/** Solves a symmetric positive definite system by Cholesky's method (Golub, Van Loan, Matrix Computations, 4.2). */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
	const size = right.length;
	const lower = matrix.map((row) => [...row]);
	const result = [...right];
	for (let j = 0; j < size; j++) {
		for (let k = 0; k < j; k++) for (let i = j; i < size; i++) lower[i][j] -= lower[i][k] * lower[j][k];
		// Rounding may leave next to nothing of a column that others say already.
		const root = Math.sqrt(Math.max(lower[j][j], ridge * matrix[j][j]));
		for (let i = j; i < size; i++) lower[i][j] /= root;
		lower[j][j] = root;
	}
	for (let i = 0; i < size; i++) {
		for (let k = 0; k < i; k++) result[i] -= lower[i][k] * result[k];
		result[i] /= lower[i][i];
	}
	for (let i = size - 1; i >= 0; i--) {
		for (let k = i + 1; k < size; k++) result[i] -= lower[k][i] * result[k];
		result[i] /= lower[i][i];
	}
	return result;
}
