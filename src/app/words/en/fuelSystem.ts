/** The fuel-system card: its fields, the limits that come of it, and what has to be said with them. */
export const words = {
	openingForm: "Opening the form…",
	title: "Fuel-system card",
	titleWith: (entered: number, all: number) =>
		`Fuel-system card: ${entered === 0 ? "empty" : `${entered} of ${all} entered`}`,
	leaveEmpty: "Leave empty whatever you don’t know: every number that is there helps.",
	parts: {
		injectors: "Injectors",
		pump: "Fuel pump",
		engine: "What the engine wants",
		lambda: "Trims and lambda",
	},
	spreads: "How sure these numbers are",
	spreadsMeant: "Standard uncertainties, relative: two times in three the true value lies within them.",
	mend: "Something above needs mending; nothing is saved yet.",
	save: "Save the card",
	saved: "The fuel-system card is saved.",

	fields: {
		injectorFlowCcPerMin: "Flow of one injector",
		injectorRatedKPa: "Pressure at which that flow is stated",
		injectorFullLoadKPa: "Pressure across the injector at full load",
		injectorCount: "Number of injectors",
		dutyLimit: "Largest injector duty",
		pumpFlowLPerH: "Pump flow at full load",
		powerKW: "Largest power",
		consumptionGPerKWh: "Brake-specific consumption on gasoline",
		trimAuthority: "How far the trims can enrich",
		commandedLambda: "Lambda commanded at full load",
		leanestLambda: "Leanest lambda the tuner accepts there",
		injectorFlowSd: "Doubt of the injector flow",
		pressureSd: "Doubt of the pressure",
		pumpFlowSd: "Doubt of the pump flow",
		powerSd: "Doubt of the power",
		consumptionSd: "Doubt of the consumption",
		trimSd: "Doubt of the trims",
		lambdaSd: "Doubt of the lambda",
	},
	unitOf: (field: string) => `Unit of “${field}”`,
	hints: {
		poundsPerHour: "1\u00a0lb/h is taken for 10.5\u00a0cc/min, a density of 0.72\u00a0kg/L (common practice).",
		fullLoadPressure: "Fuel pressure less manifold pressure. It counts only together with the one above.",
		dutyLimit: (usual: string) => `Empty counts as ${usual} (common practice: 80 to 85).`,
		pumpFlow: "Off the pump’s own curve, at the fuel pressure and the voltage of full load.",
		power: "At the crankshaft; rollers under the wheels show less.",
		/** Each from low to high, in that unit. */
		consumption: (unit: string, plain: readonly [string, string], boosted: readonly [string, string]) =>
			`At that power: often ${plain.join(" to ")}\u00a0${unit} without boost, ${boosted.join(" to ")} with it (common practice).`,
		trimAuthority: "Long and short trim together, before the engine gives up.",
		commandedLambda: "By the flashed calibration, on the blend that it was made for.",
		leanestLambda: "Larger is leaner. Only the tuner can say.",
		usual: (spread: string) => `Empty counts as ${spread}.`,
	},
	notWhole: "Count them: a whole number, such as 4.",
	leanerThanLeanest: (commanded: string) =>
		`It must not be less than the lambda commanded, ${commanded}: the larger number is the leaner one.`,

	limits: "Limits of the fuel system",
	unusable: "A number on the card can’t be used as it stands, so no limit is reckoned.",
	tooLittle: "Too little is known for any limit: fill in the card above as far as you can.",
	none: "Nothing that is known here sets a limit below pure ethanol.",
	mind: "Mind",
	tank: "Tank now",
	about: (content: string) => `about ${content}`,
	binds: "Binds",
	keys: {
		span: "nine times in ten, and the middle",
		edge: (content: string) => `lean edge, ${content}`,
		window: (content: string) => `end of the window, ${content}`,
	},
	kinds: { injectors: "Injectors", pump: "Fuel pump", trim: "Fuel trims", lambda: "Leanest lambda" },
	enough: "none, it is enough for pure ethanol",
	notEvenGasoline: "not even gasoline is met",
	likelyEnough: (low: string) => `most likely none, perhaps from ${low} on`,
	likelyNotEvenGasoline: (high: string) => `most likely not even gasoline is met, at best ${high}`,
	/** What the card, or the car, does not say that the limit hangs on. */
	missing: (fields: readonly string[], calibration: boolean) => {
		const all = [...fields.map((field) => `“${field}”`), ...(calibration ? ["a calibration"] : [])];
		return `not known: ${all.join(", ")} missing`;
	},
	binding: {
		injectors: "The injectors come first: open for as long as they may be, they deliver no more.",
		pump: "The fuel pump comes first: it delivers no more at that pressure.",
		trim: "The fuel trims come first: beyond them nothing corrects the mixture, even in closed loop.",
		lambda: "The leanest lambda comes first: beyond it full load runs leaner than the tuner accepts.",
	},
	edgeRisk: (risk: string) =>
		`All limits taken together, the real one is lower with a chance of ${risk}: what the calibration accepts of too much ethanol.`,
	window: {
		same: (end: string) =>
			`The calibration’s window ends at ${end} too: it is as wide as the fuel system surely allows.`,
		further: (end: string) => `The calibration’s window goes on to ${end}, further than the fuel system surely does.`,
		before: (end: string) =>
			`The calibration’s window ends at ${end}, before the fuel system does. Your tuner may have other reasons for that: ask before you widen it.`,
	},
	reachesPast: (range: string) =>
		`The tank’s range, ${range}, reaches past it: stay out of boost until a test or the next fill has settled it.`,
	shortFault: "That is less than the calibration was made for: stay out of boost until your tuner has looked at it.",
	shortWhy:
		"Either a number on the card is wrong, or the fuel system falls short of this very calibration. As the edge of its window it would make no sense, so it is not proposed.",
	edgeNone: "Lean edge: not even gasoline is surely met",
	edge: (content: string) => `Lean edge: ${content}`,
	cautions: {
		tunerDecides:
			"Your tuner decides, then the car’s maker. Local law applies: in the United States blends above 15\u00a0% ethanol are lawful in flex-fuel vehicles only.",
		usualSpreads:
			"Not all of these doubts are this car’s: where the card states none, the usual one is taken (common practice).",
		flowUnknown: "Nothing is known of injectors and pump, and either may give out first.",
		fullLoadUnknown:
			"The lambdas of full load are not on the card. Many engines do not carry learned trims into full load (13 of 25 cars screened, CRC E-87-1), so trims alone promise nothing there.",
	},

	halfTyped: "Another calibration is half-typed, and its form would be emptied. Save it first, or go on without it.",
	goOn: "Go on without the half-typed one",
	useEdge: (content: string) => `Use ${content} as the window’s upper edge`,
	opens:
		"It opens the calibration with this number in its form. Nothing changes before it is saved there, and your tuner decides.",
};

export type Words = typeof words;
