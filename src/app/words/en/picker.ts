/** Choosing a fuel. */
export const words = {
	question: "What are you pumping?",
	another: "Another fuel",
	labelled: "Flex fuel labelled with a percentage",
	take: "Take it",
	rounded: "US labels may be rounded to the nearest ten, so five points either way are reckoned with.",
	own: "A fuel of your own",
	name: "Name",
	from: "From, % ethanol",
	to: "To, % ethanol",
	swapped: "The lower limit is above the higher one: swap them.",
	use: "Use this fuel",
	/** Where the range is from, as the catalogue has it. */
	source: (given: string) => given,
	entry: (product: string, range: string) => `${product}: ${range}`,
};

export type Words = typeof words;
