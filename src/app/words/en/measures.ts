const shares = {
	tenth: "a tenth",
	fifth: "a fifth",
	quarter: "a quarter",
	third: "a third",
	half: "",
	twoThirds: "two thirds",
	threeQuarters: "three quarters",
	nearlyAll: "nearly all",
};
type Share = keyof typeof shares;
type Moment = "beforeFill" | "now" | "after";

const at: Readonly<Record<Moment, string>> = { beforeFill: " before you fill", now: "", after: " afterwards" };

/** What measurements are worth. */
export const words = {
	failed: "What a measurement is worth could not be reckoned. Reload the app and try again.",
	reckoning: "Reckoning what a measurement would tell…",
	bar: (filling: boolean, span: string) =>
		`A full bar is the doubt about the content ${filling ? "after this fill" : "now in the tank"}: 9 in 10 span ${span}. The dark part is what the measurement is expected to take off.`,

	/** What one does, each as the beginning of a sentence or the middle of one. `fuel`: where several can be tested. */
	pumpSample: (moment: Moment, fuel: string | null) =>
		`testing ${fuel === null ? "this pump’s fuel" : `the “${fuel}” of this pump`}${at[moment]}`,
	gauge: (moment: Moment) => `noting the gauge${at[moment]}`,
	tankSample: (moment: Moment) => `a water test of the tank${at[moment]}`,
	analyser: (moment: Moment) => `an analyser’s reading of the tank${at[moment]}`,
	trim: (moment: Moment) =>
		moment === "after"
			? "the fuel trims, once learned on the new blend,"
			: `the fuel trims, read${at[moment] || " now"},`,
	click: "filling to the click instead",

	/** `again`: the doubt was spoken of already. */
	narrows: (share: Share, again: boolean) =>
		share === "half" ? "halve the doubt" : `take off ${shares[share]}${again ? "" : " of the doubt"}`,
	raises: (from: string, to: string) => `raise the chance of being inside from ${from} to ${to}`,
	raisesALittle: "raise the chance of being inside a little",
	would: (doing: string, effects: readonly string[]) => `${doing} would ${effects.join(" and ")}`,
	sentence: (all: readonly string[]) => `${all.join("; ")}.`,
	nothing: "Nothing that you could measure now would tell you much more.",
};

export type Words = typeof words;
