/** A calibration as it is entered. */
export const words = {
	reading: "Reading the log…",
	opening: "Opening the form…",
	none: "No such calibration",
	noneMore: "It may have been changed since: the list has what there is.",
	toList: "To the list",
	new: "A new calibration",
	change: (name: string) => `Change “${name}”`,
	factInForce:
		"Its window was in force for a part of the log, and that part keeps it. What you save here is a new version, flashed from now on.",
	fact: "Its window was in force for a part of the log, and that part keeps it. What you save here is added to the list as a new version.",
	/** Of the upper edge. */
	proposed: (edge: string) => `${edge} as the upper edge is proposed from the fuel-system card.`,
	proposedMore: "It is not saved yet: your tuner decides.",
	howSure: "How sure you want to be",
	howSureMore:
		"You are warned as soon as the chance is larger than this. 1 in 20 is usual; ask your tuner before you accept more.",
	lean: "Accepted chance of too much ethanol (lean)",
	knock: "Accepted chance of too little ethanol (knock)",
	usual: "usual",
	oneIn: (count: number) => `1 in ${count}`,
	first: "As the first one it counts as flashed, for the log so far as well.",
	flashed: "It is flashed now",
	flashedMore: "From now on the tank is held against its window.",
	mend: "Something above needs mending; nothing is saved yet.",
	busy: "One moment…",
	save: "Save the calibration",
	saved: (name: string) => `“${name}” is saved.`,
	leave: "Leave it as it was",
	leaveNew: "Back, without a new one",

	madeFor: "Made for, % ethanol",
	madeForHint: "The blend your tuner had in mind.",
	window: "The window it tolerates",
	from: "From, %",
	to: "To, %",
	assumed: "Four points either way are our assumption; ask your tuner.",
	windowHint: "Below it the engine may knock, above it runs lean under boost.",
	name: "Name of the calibration",
	nameHint: (usual: string) => `May stay empty: then it is called “${usual}”.`,
	usualName: (content: string) => `Blend ${content}`,
	usualNameAlone: "Blend",
	endsTooLow: (from: string) => `The window must end above its beginning, ${from}: raise this or lower that.`,
	outsideWindow: (madeFor: string, window: string) =>
		`The blend it is made for, ${madeFor}, lies outside the window of ${window}: one of the three is mistyped.`,
};

export type Words = typeof words;
