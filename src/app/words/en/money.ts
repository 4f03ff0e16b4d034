/** Prices, and what fuel is paid in. */
export const words = {
	unitPrice: (price: string, unit: string) => `${price} per\u00a0${unit}`,
	/** Distances in which costs are told. */
	hundredKm: "100\u00a0km",
	mile: "mile",
	paidIn: "Fuel is paid in",
	notSaid: "Not said: plain numbers",
	hint: "The three letters of the currency, such as EUR. Leave it empty for plain numbers.",
	take: (name: string, code: string) => `Take ${name} (${code})`,
	fault: "Three letters, such as EUR or USD, or nothing.",
};

export type Words = typeof words;
