/** Entries of the log in a line, and what would mend a blend. */
export const words = {
	/** Of the tank at a start. */
	began: (content: string) => `the account began with ${content} ethanol in the tank`,
	gaugeNoted: (share: string) => `the gauge was noted at ${share}`,
	/** `by`: the instrument, where it is known. */
	tankMeasured: (content: string, by: string | undefined) =>
		`the tank was measured${by ? ` by ${by}` : ""}: ${content}`,
	pumpMeasured: (fuel: string, place: string, content: string, by: string | undefined) =>
		`“${fuel}” at ${place} was measured${by ? ` by ${by}` : ""}: ${content}`,
	trim: (trim: string, calibratedFor: string, by: string | undefined) =>
		`fuel trim${by ? ` by ${by}` : ""}: ${trim} on a calibration for ${calibratedFor}`,
	poured: (amount: string, fuel: string) => `${amount} of “${fuel}”`,
	/** `poured`: every fuel in order. */
	stop: (poured: readonly string[], place: string | undefined, toClick: boolean) =>
		`${poured.join(" and ")}${place === undefined ? "" : ` at ${place}`}${toClick ? ", filled to the click" : ""}`,
	/** Where such a line stands alone. */
	alone: (line: string) => line.charAt(0).toLocaleUpperCase() + line.slice(1),

	about: (amount: string) => `about ${amount}`,
	mend: (amount: string, fuel: string) => `What would mend it: ${amount} of “${fuel}”, if added before driving on.`,
	noMend: (fuel: string) => `No amount of “${fuel}” that fits the tank would help: burn some first, out of boost.`,
	help: (amount: string, fuel: string, inside: string) =>
		`What would help, not cure: about ${amount} of “${fuel}”, if added before driving on. Inside would then be ${inside}.`,
};

export type Words = typeof words;
