/** What to pump: the question, and the answer around its pours. */
import type { Fullness } from "../../../domain/plan/request";

export const words = {
	openingLog: "Opening the log…",
	opening: "Opening the form…",
	reckoning: "Reckoning…",
	title: "What to pump",
	/** Of a heading, while a newer question is reckoned. */
	busy: (heading: string) => `${heading}: reckoning…`,
	needsCalibration: "A plan needs to know what to pump for: enter the calibration first.",
	enterCalibration: "Enter the calibration",
	tookPlace: "The plan took the place of what was being typed.",
	undo: "Undo",
	pouredAlready: "Poured already",
	inTank: (pours: readonly string[]) =>
		`In the tank at this stop already: ${pours.join(", ")}. Planned is what comes on top.`,
	changeInForm: "Change that in the form",
	/** `gauge`: as read, null where nobody looked; `odometer` as typed. */
	noted: (gauge: string | null, odometer: string) =>
		`Gauge now: ${gauge ?? "not looked"}${odometer === "" ? "" : `, odometer ${odometer}`}`,
	gauge: "Fuel gauge now",
	gaugeBefore: "Fuel gauge before filling",
	gaugeHint: "What is left decides how far a fill moves the blend, and how much fits.",
	noPlace: "Place not named",

	mendBelow: "Mend what is marked below.",
	failed: "The plan could not be reckoned. Change something, or reload the app.",
	leadsTo: "What it leads to",
	pump: "Pump this",
	pumpAllTheSame: "Pump this all the same",
	settle: "What would settle it?",
	noPlan: "No plan does it",
	nobodyLooked: "Nobody has looked at the gauge yet, and what is left in the tank counts most.",
	noteGauge: "Note the gauge",
	nearest: "The nearest",
	inside: (chance: string) => `Inside: ${chance}.`,
	outside: (above: string, below: string) => `Too much: ${above}, too little: ${below}.`,
	/** Before the range that it lies in nine times in ten. */
	contentThen: (content: string) => `About ${content} then, 9 in 10:`,
	costs: (money: string) => `It costs about ${money}.`,
	target: (name: string, window: string) => `For “${name}”, window ${window}.`,

	otherWays: "What else could be done",
	finishFirst: "Finish this stop first: something is poured already.",
	afterGauge: "How much to drive off first can be said once the gauge is noted.",
	stage: (pours: string, inside: string, above: string) => `${pours}: inside ${inside}, too much ${above}.`,
	lookHelps:
		"A look at the gauge or a test of the fuel may help more than either: the less is unknown, the closer a plan can go.",

	onSale: "On sale here",
	another: "Another product",
	howFull: "How full",
	howFullQuestion: "How full?",
	fullness: {
		click: "To the click",
		litres: "An amount",
		money: "For a sum of money",
	} satisfies Record<Fullness["kind"], string>,
	inAll: (unit: string) => `In all, ${unit}`,
	forHowMuch: (currency: string | undefined) => (currency === undefined ? "For how much" : `For how much, ${currency}`),
	details: "Details",
	pumpFor: "Pump for",
	pumpForHint: "If another calibration is going to be flashed after this stop, plan for that one.",
	flashedNow: (window: string) => `${window}, flashed now`,
	step: (unit: string) => `Amounts in steps of, ${unit}`,
	stepHint: "What your hand can hit at the nozzle.",
	minimum: (unit: string) => `Least that the dispenser sells, ${unit}`,
	minimumHint: "It stands on the dispenser where there is such a limit. Empty: none.",
	noAmount: "How much in all? Type it below.",
	noMoney: "For how much? Type it below.",
	/** Behind "between". */
	moneyLimits: (least: string) => `${least} and ten million`,
};

export type Words = typeof words;
