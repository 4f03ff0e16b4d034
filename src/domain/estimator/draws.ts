/**
 * Draws for a whole column at once, from a rank-1 lattice: the particles are taken in order of content, and together with
 * that order every draw fills its unit interval evenly (array-RQMC: L'Ecuyer, Lécot, Tuffin, Operations Research 56 (2008)
 * 958). Random shifts keep it free of bias.
 */
import { normalQuantile } from "../elementary";
import { type Seeds, uniform } from "../random";

/**
 * Generating vector of an embedded lattice for up to 2^20 points (Cools, Kuo, Nuyens, SIAM J. Sci. Comput. 28 (2006) 2162;
 * from memory: any odd number is correct, these are even).
 */
const generators = [
	182667, 469891, 498753, 110745, 446247, 250185, 118627, 245333, 283199, 408519, 391023, 246327, 126539, 399185,
	461527, 300343, 69681, 516695, 436179, 106383, 238523, 413283, 70841, 47719, 300129, 113029, 123925, 410745, 211325,
	17489, 511893, 40767, 186077, 519471, 255369, 101819, 243573, 66189, 152143, 503455, 113217, 132603, 463967, 297717,
	157383, 224015, 502917, 36237, 94049, 170665, 79397,
];

/** One event's source of draws; each call gives the next coordinate of the lattice. */
export interface Draws {
	/** Uniform on 0 … 1, ends excluded, one for each particle. */
	uniforms(): Float64Array;
	/** Standard normal, one for each particle. */
	normals(): Float64Array;
}

/** `order` holds the particles in ascending order of content. */
export function drawsFor(order: Uint32Array, seeds: Seeds): Draws {
	const size = order.length;
	const mask = size - 1;
	// Another stretch of the vector for every event: draws of successive events stay independent though the order may not change.
	let coordinate = seeds() % generators.length;

	function filled(value: (stratum: number, within: number) => number): Float64Array {
		const column = new Float64Array(size);
		const generator = generators[coordinate];
		coordinate = (coordinate + 1) % generators.length;
		let stratum = seeds() & mask;
		const within = uniform(seeds);
		for (let rank = 0; rank < size; rank++) {
			column[order[rank]] = value(stratum, within);
			stratum = (stratum + generator) & mask;
		}
		return column;
	}

	return {
		uniforms: () => filled((stratum, within) => (stratum + within) / size),
		normals: () => {
			const table = normalTable(size);
			return filled((stratum) => table[stratum]);
		},
	};
}

const tables = new Map<number, Float64Array>();

/** Middle quantiles of the normal in 2^n strata. */
function normalTable(size: number): Float64Array {
	let table = tables.get(size);
	if (!table) {
		table = new Float64Array(size);
		for (let i = 0; i < size; i++) table[i] = normalQuantile((i + 0.5) / size);
		tables.set(size, table);
	}
	return table;
}
