import type { Words } from "../en/money";

export const words: Words = {
	unitPrice: (price, unit) => `${price} pro\u00a0${unit}`,
	hundredKm: "100\u00a0km",
	mile: "Meile",
	paidIn: "Kraftstoff bezahlt in",
	notSaid: "Nicht gesagt: bloße Zahlen",
	hint: "Die drei Buchstaben der Währung, etwa EUR. Leer bleibt es bei bloßen Zahlen.",
	take: (name, code) => `${name} (${code}) nehmen`,
	fault: "Drei Buchstaben, etwa EUR oder CHF, oder nichts.",
};
