/** A calibration card as a tuner types it. */
import { fraction } from "../domain/quantity";
import { err, ok, type Result } from "../domain/result";
import type { Calibration } from "../domain/vehicle";
import { usualBudget } from "../domain/warnings";
import {
	type Card,
	excessOf,
	longestCardName,
	longestNotes,
	longestWayBack,
	packedCard,
	readCard,
} from "../share/card";
import { framed } from "../share/frame";
import { lastDay } from "../store/limits";
import {
	type CalibrationFaults,
	type CalibrationForm,
	calibrationFormOf,
	emptyCalibration,
	readCalibration,
} from "./calibrationForm";
import { date } from "./format";
import { readNumber } from "./numberWords";
import { typedNumber } from "./typedNumber";
import { cardWords } from "./words/card";

export interface CardForm {
	readonly calibration: CalibrationForm;
	readonly lean: string;
	readonly knock: string;
	readonly lambda: string;
	readonly notes: string;
	readonly wayBack: string;
	/** `2026-06-01`, or empty. */
	readonly validUntil: string;
}

export type CardFaults = CalibrationFaults &
	Partial<Record<"name" | "lambda" | "notes" | "wayBack" | "validUntil" | "card", string>>;

export const emptyCard: CardForm = {
	calibration: emptyCalibration,
	lean: String(usualBudget),
	knock: String(usualBudget),
	lambda: "",
	notes: "",
	wayBack: "",
	validUntil: "",
};

/** With all that is known of a calibration. */
export function cardFormOf(calibration: Calibration): CardForm {
	const { leanBudget = usualBudget, knockBudget = usualBudget, leanestLambda, notes = "", wayBack = "" } = calibration;
	return {
		calibration: calibrationFormOf(calibration),
		lean: String(leanBudget),
		knock: String(knockBudget),
		lambda: leanestLambda === undefined ? "" : typedNumber(leanestLambda),
		notes,
		wayBack,
		validUntil: "",
	};
}

/** A stored draft, if that is what it is. */
export function readCardForm(raw: unknown): CardForm | null {
	const draft = raw as Partial<CardForm> | null | undefined;
	return typeof draft?.notes === "string" && draft.calibration ? { ...emptyCard, ...draft } : null;
}

const [leastLambda, mostLambda] = [0.5, 1.5];

/** `today` as `2026-06-01`. */
export function readCardFields(form: CardForm, today: string): Result<Card, CardFaults> {
	const words = cardWords();
	const calibration = readCalibration(form.calibration);
	const limits = { example: "0.86", limits: `${typedNumber(leastLambda)}–${typedNumber(mostLambda)}` };
	const lambda = form.lambda.trim() === "" ? null : readNumber(form.lambda, leastLambda, mostLambda, limits);
	const [notes, wayBack] = [form.notes.trim(), form.wayBack.trim()];
	const faults: CardFaults = {
		...(calibration.ok ? {} : calibration.error),
		...(calibration.ok && calibration.value.name.length > longestCardName
			? { name: words.tooLong(longestCardName) }
			: {}),
		...(lambda && !lambda.ok ? { lambda: lambda.error } : {}),
		...(notes.length > longestNotes ? { notes: words.tooLong(longestNotes) } : {}),
		...(wayBack.length > longestWayBack ? { wayBack: words.tooLong(longestWayBack) } : {}),
		...dayFault(form.validUntil, today),
	};
	if (!calibration.ok || Object.keys(faults).length > 0) return err(faults);
	const card: Card = {
		...calibration.value,
		...budget("leanBudget", form.lean),
		...budget("knockBudget", form.knock),
		...(lambda?.ok ? { leanestLambda: lambda.value } : {}),
		...(notes === "" ? {} : { notes }),
		...(wayBack === "" ? {} : { wayBack }),
		...(form.validUntil === "" ? {} : { validUntil: form.validUntil }),
	};
	const excess = excessOf(card);
	// A letter takes five bits or more.
	if (excess > 0) return err({ notes: words.tooLarge(Math.ceil((excess * 8) / 5)) });
	return isReadable(card) ? ok(card) : err({ card: words.unreadable });
}

function dayFault(day: string, today: string): Pick<CardFaults, "validUntil"> {
	if (day === "") return {};
	// Years of five digits are less as texts, and later all the same.
	if (day.length > 10 || day > lastDay) return { validUntil: cardWords().tooFar(date(`${lastDay}T12:00:00`)) };
	return day < today ? { validUntil: cardWords().past } : {};
}

/** Held against the reader itself: it may know a rule that no field does. */
function isReadable(card: Card): boolean {
	const body = packedCard(card);
	return body !== null && readCard(framed("card", body)).ok;
}

/** The usual one need not be said. */
function budget(field: "leanBudget" | "knockBudget", typed: string): Partial<Card> {
	return Number(typed) === usualBudget ? {} : { [field]: fraction(Number(typed)) };
}
