/** What the car burns and how far the fuel goes. */
export const words = {
	failed: "What the car burns could not be reckoned. Reload the app and try again.",
	reckoning: "Reckoning what the car burns…",
	unknown: "What the car burns is learned from the odometer at two stops. Enter it with the next fills.",
	goes: "It goes",
	burns: "It burns",
	milesPer: (unit: string) => `miles per ${unit}`,
	litresPer: "L/100 km",
	about: (median: string, unit: string, range: string) => `about ${median} ${unit}, 9 in 10: ${range}`,
	untilEmpty: "Until empty",
	learned:
		"Learned from odometer and fills, for the blend now in the tank. The way until empty counts from the last entry; the gauge comes first, and a reserve belongs on top.",
};

export type Words = typeof words;
