import type { Words } from "../en/format";

export const words: Words = {
	fromTo: (low, high) => `${low} bis ${high}`,
	almostNone: "fast keine",
	fewerThanOne: "weniger als 1 von 20",
	moreThanNineteen: "mehr als 19 von 20",
	inTwenty: (count) => `${count} von 20`,
	withinTheHour: "in der letzten Stunde",
	today: "heute",
	aDayAgo: "gestern",
	daysAgo: (days) => `vor ${days} Tagen`,
};
