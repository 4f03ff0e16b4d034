/** The ethanol content that the car itself reports. */
export const words = {
	title: "The car’s own report",
	about:
		"Some engine computers tell the ethanol content they reckon with: service 01, PID 52 of SAE J1979. The standard fixes how it is coded, not how true it is.",
	steps: (from: number, to: number, distance: string) => [
		"Plug a scan tool into the diagnostic socket and start the engine.",
		`After a fill drive ${from} to ${to}\u00a0minutes and some ${distance} first.`,
		"Among the live data find “alcohol fuel percentage” or “ethanol fuel %”.",
		"Type what it shows.",
	],
	cautions: [
		"Read it standing still, or let a passenger read it.",
		"A figure that never changes from fill to fill is not measured: leave it out.",
	],
	shownAs: "It is shown as",
	percent: "Shown, % ethanol",
	byte: "Shown, raw byte",
	byteHint: "Such as 4D, 0x4D or 77; or the whole response, such as 41\u00a052\u00a04D.",
	from: "Where does the car know it from?",
	inferred: "From the fuel trims, or not known",
	inferredMore: "usual without a sensor",
	sensor: "From a sensor in the fuel line",
	why: {
		sensor: "3 for a sensor that is good to 5 points either way.",
		inferred: "8, as a trim that is off by 3 % puts it off by about that.",
	},
};

export type Words = typeof words;
