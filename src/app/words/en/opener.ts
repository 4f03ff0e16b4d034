/** Opening a log file: a backup, or the log from another phone. */
export const words = {
	open: "Open a backup",
	tooLong: (most: string) => `The file is over ${most}, which no log is: choose a file that Heeltap saved.`,
	unreadable: "The phone would not give the file: choose it again, from the phone’s own storage.",
	notText: "The file is not UTF-8 text: choose a file that Heeltap saved.",
	unchanged: (fault: string) => `${fault} Nothing was changed.`,
	entries: (added: number, known: number) =>
		`${added} new ${added === 1 ? "entry" : "entries"}, ${known} known already`,
	entriesLacking: (added: number, known: number, lacking: number) =>
		`${added} new ${added === 1 ? "entry" : "entries"}, ${known} known already; the file lacks at least ${lacking} that its phone had written`,
	opened: (car: string, entries: string) => `“${car}” is here now: ${entries}.`,
	joined: (entries: string) => `The log of this car was joined: ${entries}.`,
	joinedDecided: (entries: string, settings: string) =>
		`The log of this car was joined: ${entries}. The two had other settings (${settings}): of each the one changed last counts now.`,
	/** By the names of the fields. */
	settings: { name: "name", tank: "tank", currency: "currency", fuelSystem: "fuel system" },
	otherSetting: (field: string) => `“${field}”`,
};

export type Words = typeof words;
