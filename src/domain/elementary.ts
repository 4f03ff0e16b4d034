/**
 * exp, log and the normal distribution from plain IEEE arithmetic. Engines disagree in the last bits of
 * Math.exp and Math.log, and the same log has to show the same numbers on every device.
 */

const ln2High = 6.9314718036912381649e-1;
const ln2Low = 1.90821492927058770002e-10;

/** 2 to the power n for n from -1074 to 1023, exact by repeated doubling. */
const powersOfTwo = (() => {
	const table = new Float64Array(2098);
	table[1074] = 1;
	for (let i = 1075; i < 2098; i++) table[i] = table[i - 1] * 2;
	for (let i = 1073; i >= 0; i--) table[i] = table[i + 1] / 2;
	return table;
})();

/** e to the power x; within 1 ulp (method and coefficients of FreeBSD msun e_exp.c). */
export function exp(x: number): number {
	// Below the first bound lies at most the least number there is, above the second nothing finite.
	if (!(x > -744.7)) return Number.isNaN(x) ? x : 0;
	if (x > 709.782712893384) return Infinity;
	const k = Math.floor(x / 0.6931471805599453 + 0.5);
	const high = x - k * ln2High;
	const low = k * ln2Low;
	const r = high - low;
	const t = r * r;
	const c =
		r -
		t *
			(1.66666666666666019037e-1 +
				t *
					(-2.77777777770155933842e-3 +
						t * (6.61375632143793436117e-5 + t * (-1.6533902205465251539e-6 + t * 4.13813679705723846039e-8))));
	const y = 1 - (low - (r * c) / (2 - c) - high);
	// 2^1024 is no double: the largest arguments take two steps.
	return k > 1023 ? y * powersOfTwo[2097] * 2 : y * powersOfTwo[k + 1074];
}

const parts = new DataView(new ArrayBuffer(8));

/** Natural logarithm of a positive normal number; within 1 ulp (FreeBSD msun e_log.c); -Infinity at or below 0. */
export function log(x: number): number {
	if (!(x > 0)) return Number.isNaN(x) ? x : -Infinity;
	if (x === Infinity) return x;
	if (x < 2.2250738585072014e-308) return log(x * 18014398509481984) - 37.42994775023705;
	parts.setFloat64(0, x);
	const highWord = parts.getInt32(0);
	let k = (highWord >> 20) - 1023;
	const mantissa = highWord & 0xfffff;
	// Bring the mantissa into sqrt(1/2) … sqrt(2).
	const i = (mantissa + 0x95f64) & 0x100000;
	parts.setInt32(0, mantissa | (i ^ 0x3ff00000));
	k += i >> 20;
	const f = parts.getFloat64(0) - 1;
	const s = f / (2 + f);
	const z = s * s;
	const w = z * z;
	const t1 = w * (3.999999999940941908e-1 + w * (2.222219843214978396e-1 + w * 1.531383769920937332e-1));
	const t2 =
		z *
		(6.66666666666673513e-1 +
			w * (2.857142874366239149e-1 + w * (1.818357216161805012e-1 + w * 1.479819860511658591e-1)));
	const r = t1 + t2;
	const halfSquare = 0.5 * f * f;
	return k * ln2High - (halfSquare - (s * (halfSquare + r) + k * ln2Low) - f);
}

/** Standard normal density at z. */
export function normalDensity(z: number): number {
	return 0.3989422804014327 * exp(-0.5 * z * z);
}

/**
 * Chance that a standard normal lies below z, with full relative accuracy in the lower tail.
 * Hart, Computer Approximations (1968), algorithm 5666, as given by West, Wilmott, May 2005; absolute error under 1e-14.
 */
export function normalChance(z: number): number {
	const x = Math.abs(z);
	if (x > 38) return z > 0 ? 1 : 0;
	const e = exp(-0.5 * x * x);
	let lower: number;
	if (x < 7.07106781186547) {
		const top =
			((((((3.52624965998911e-2 * x + 0.700383064443688) * x + 6.37396220353165) * x + 33.912866078383) * x +
				112.079291497871) *
				x +
				221.213596169931) *
				x +
				220.206867912376) *
			e;
		const bottom =
			((((((8.83883476483184e-2 * x + 1.75566716318264) * x + 16.064177579207) * x + 86.7807322029461) * x +
				296.564248779674) *
				x +
				637.333633378831) *
				x +
				793.826512519948) *
				x +
			440.413735824752;
		lower = top / bottom;
	} else {
		lower = e / (x + 1 / (x + 2 / (x + 3 / (x + 4 / (x + 0.65))))) / 2.506628274631;
	}
	return z > 0 ? 1 - lower : lower;
}

/**
 * The z below which a standard normal lies with the given chance (0 to 1; -Infinity and Infinity at the ends).
 * Wichura, Applied Statistics 37 (1988) 477, algorithm AS 241 (PPND16), relative error about 1e-16.
 */
export function normalQuantile(chance: number): number {
	const q = chance - 0.5;
	if (Math.abs(q) <= 0.425) {
		const r = 0.180625 - q * q;
		return (
			(q *
				(((((((2.5090809287301226727e3 * r + 3.3430575583588128105e4) * r + 6.7265770927008700853e4) * r +
					4.5921953931549871457e4) *
					r +
					1.3731693765509461125e4) *
					r +
					1.9715909503065514427e3) *
					r +
					1.3314166789178437745e2) *
					r +
					3.387132872796366608)) /
			(((((((5.226495278852854561e3 * r + 2.8729085735721942674e4) * r + 3.930789580009271061e4) * r +
				2.1213794301586595867e4) *
				r +
				5.3941960214247511077e3) *
				r +
				6.871870074920579083e2) *
				r +
				4.2313330701600911252e1) *
				r +
				1)
		);
	}
	const tail = q < 0 ? chance : 1 - chance;
	if (!(tail > 0)) return q < 0 ? -Infinity : Infinity;
	let r = Math.sqrt(-log(tail));
	let z: number;
	if (r <= 5) {
		r -= 1.6;
		z =
			(((((((7.7454501427834140764e-4 * r + 2.27238449892691845833e-2) * r + 2.4178072517745061177e-1) * r +
				1.27045825245236838258) *
				r +
				3.64784832476320460504) *
				r +
				5.7694972214606914055) *
				r +
				4.6303378461565452959) *
				r +
				1.42343711074968357734) /
			(((((((1.05075007164441684324e-9 * r + 5.475938084995344946e-4) * r + 1.51986665636164571966e-2) * r +
				1.4810397642748007459e-1) *
				r +
				6.8976733498510000455e-1) *
				r +
				1.6763848301838038494) *
				r +
				2.05319162663775882187) *
				r +
				1);
	} else {
		r -= 5;
		z =
			(((((((2.01033439929228813265e-7 * r + 2.71155556874348757815e-5) * r + 1.2426609473880784386e-3) * r +
				2.6532189526576123093e-2) *
				r +
				2.9656057182850489123e-1) *
				r +
				1.7848265399172913358) *
				r +
				5.4637849111641143699) *
				r +
				6.6579046435011037772) /
			(((((((2.04426310338993978564e-15 * r + 1.4215117583164458887e-7) * r + 1.8463183175100546818e-5) * r +
				7.868691311456132591e-4) *
				r +
				1.48753612908506148525e-2) *
				r +
				1.3692988090273580531e-1) *
				r +
				5.9983220655588793769e-1) *
				r +
				1);
	}
	return q < 0 ? -z : z;
}
