/** What the fuel cost, what the ethanol in it cost, and how far it takes the car. */
export const words = {
	opening: "Opening the log…",
	none: "No fuel is in the log yet",
	noneMore: "Record a fill with its price and the odometer, and what it cost is told here.",
	record: "Record a fill",
	bought: "Fuel bought",
	enterPrice: "Type the price in with the next fill: every litre that has one counts here.",
	notKnown: "not known",
	inAll: "In all",
	plainNumbers: "Amounts are plain numbers, because no currency is chosen.",
	chooseCurrency: "Choose it under Car",
	monthly: "Cost of each month",
	olderMonths: (count: number) => `Older months (${count})`,
	ethanol: "What the ethanol cost",
	cheaper: "cheaper than gasoline",
	dearer: "dearer",
	/** `compared`: how the blend compares, before what it is held against. */
	lastStop: (when: string, compared: string, against: string) =>
		`At the last such stop, ${when}, the blend cost ${compared} its heat bought as ${against}.`,
	heatOnly:
		"A litre of ethanol holds a third less heat than one of gasoline. Only heat is compared here, by the middles of the labels; what the engine makes of it is another matter.",
	distance: "What the distance cost",
	perDistance: (distance: string) => `Per ${distance}, about`,
	consumption: "Consumption and range",
	stops: "Stop by stop",
	olderStops: (count: number) => `Older stops (${count})`,
	/** Of a stop: its place behind the time. */
	at: (when: string, place: string | null) => (place === null ? when : `${when}, ${place}`),
	stopCompared: (compared: string, range: string) => `${compared} its heat as gasoline (${range})`,

	noPriceOfOne: "No price was entered for it.",
	noPriceOfAny: (fills: number) => `No price was entered for any of the ${fills} fills.`,
	noPriceOfSome: (unpriced: number, fills: number) =>
		`No price was entered for ${unpriced} of ${fills} fills: they are not in the sum.`,
	/** Differences: alone, and before what is compared with. */
	same: "neither more nor less",
	more: (money: string) => `${money} more`,
	less: (money: string) => `${money} less`,
	asMuchAs: "as much as",
	moreThan: (money: string) => `about ${money} more than`,
	lessThan: (money: string) => `about ${money} less than`,
	range: (least: string, most: string) => `from ${least} to ${most}`,
	noBlends: "Nothing but gasoline was bought, so no ethanol was paid for apart.",
	noEthanol:
		"What the ethanol costs can be told once a stop has the prices of all it poured, and gasoline was bought before or with it.",
	blends: (stops: number, compared: string, range: string) =>
		`${stops === 1 ? "The blend of one stop" : `The blends of ${stops} stops`} cost ${compared} the same heat bought as gasoline. By what the labels allow: ${range}.`,
	untold: (stops: number) =>
		`${stops === 1 ? "One more stop does" : `${stops} more stops do`} not tell: a price is missing, or no gasoline was bought yet.`,
	against: (fuel: string, price: string, place: string | undefined, date: string) =>
		`“${fuel}” at ${price} (${place === undefined ? "" : `${place}, `}${date})`,
	noPrice: "no price entered",
	priceMissing: "a price is missing",
	byClicks: (distance: string, from: string, to: string, low: string, high: string, per: string) =>
		`Over ${distance}, ${from} to ${to}, from one filling to the click to another, 9 in 10: ${low} to ${high} per ${per}.`,
	byBounds: (distance: string, from: string, to: string, low: string, high: string, per: string) =>
		`Over ${distance}, ${from} to ${to}, as far as the tank’s size bounds it, without two fillings to the click, at least and at most: ${low} to ${high} per ${per}.`,
	leftOutUnpriced: (count: number) =>
		`${count === 1 ? "One stretch is" : `${count} stretches are`} left out because a price is missing.`,
	leftOutUnbelievable: (count: number) =>
		`${count === 1 ? "One stretch is" : `${count} stretches are`} left out because odometer and litres do not fit each other: look for a mistyped odometer in the log.`,
	/** `stops`: with the odometer, at most one. */
	noOdometer: (stops: number) =>
		`Two stops with the odometer bound the fuel burned between them; ${stops === 0 ? "no stop has it yet" : "so far one has it"}. Enter it with the next fills.`,
	noPricedStretch:
		"Between no two stops with the odometer every fill has a price. Enter price and odometer with the next fills.",
	unbelievable:
		"Odometer and litres do not fit each other: no car burns that little or that much. Look for a mistyped odometer in the log.",
	tooLittle:
		"What was burned between the stops is not bounded well enough. Fill to the nozzle’s click twice, with the odometer, and it is.",
};

export type Words = typeof words;
