/** A look at the gauge without a fill. */
export const words = {
	title: "A look at the gauge",
	about: "Burning fuel does not change the blend. But what is left in the tank decides how far the next fill moves it.",
	steps: ["Stand on level ground, ignition on.", "Wait until the needle stands still."],
	gauge: "Fuel gauge",
	unknown: "Not looked yet",
	missing: "Say where the gauge stands.",
};

export type Words = typeof words;
