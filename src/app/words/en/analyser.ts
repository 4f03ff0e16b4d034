/** An ethanol analyser, or the gauge of a sensor. */
export const words = {
	title: "Ethanol analyser or sensor gauge",
	about: "It measures how well the fuel conducts and stores charge. Water or methanol in it shifts the reading.",
	steps: (from: number, to: number) => [
		`After a fill drive ${from} to ${to}\u00a0minutes, so that the tank is mixed and the lines hold its fuel.`,
		"Do as its maker says; warming up and rinsing come before the reading.",
		"Wait until the figure stands still.",
	],
	cautions: [
		"Fuel in the lines is under pressure: taking it from there is a workshop’s job, unless the car’s maker gives a procedure.",
		"Fuel vapour burns and is harmful: work outdoors, with gloves and goggles, and with nothing hot or sparking near.",
	],
	shows: "It shows, % ethanol",
	why: "2.5 is common practice; if its maker states an accuracy, type that.",
};

export type Words = typeof words;
