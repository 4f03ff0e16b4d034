/** A calibration as a person types it. */
import { contentRange, type Fraction, fraction } from "../domain/quantity";
import { err, ok, type Result } from "../domain/result";
import type { Calibration } from "../domain/vehicle";
import { usualBudget } from "../domain/warnings";
import { exactPercent, exactPercentRange } from "./format";
import { readPercent, typedPercent } from "./numberWords";
import { parseNumber } from "./parseNumber";
import { calibrationWords } from "./words/calibration";

export interface CalibrationForm {
	readonly name: string;
	readonly madeFor: string;
	readonly from: string;
	readonly to: string;
	/** The window still follows the made-for value. */
	readonly assumed: boolean;
}

export type CalibrationFaults = Partial<Record<"madeFor" | "from" | "to", string>>;

export const emptyCalibration: CalibrationForm = { name: "", madeFor: "", from: "", to: "", assumed: true };

/** Points either side of the made-for value, where nobody says otherwise (our assumption). */
const assumedPoints = 4;

export function calibrationFormOf({ name, calibratedFor, window }: Calibration): CalibrationForm {
	const [from, to] = window.map(typedPercent);
	return { name, madeFor: typedPercent(calibratedFor), from, to, assumed: false };
}

export function withMadeFor(form: CalibrationForm, madeFor: string): CalibrationForm {
	if (!form.assumed) return { ...form, madeFor };
	const typed = parseNumber(madeFor, 0, 100);
	if (!typed.ok) return { ...form, madeFor, from: "", to: "" };
	const from = typedPercent(Math.max(0, typed.value - assumedPoints) / 100);
	const to = typedPercent(Math.min(100, typed.value + assumedPoints) / 100);
	return { ...form, madeFor, from, to };
}

/** What a calibration without a name is called. */
export function usualName(madeFor: string): string {
	const typed = parseNumber(madeFor, 0, 100);
	const words = calibrationWords();
	return typed.ok ? words.usualName(typedPercent(typed.value / 100)) : words.usualNameAlone;
}

export function readCalibration(form: CalibrationForm): Result<Omit<Calibration, "id">, CalibrationFaults> {
	const madeFor = readPercent(form.madeFor, "30");
	const from = readPercent(form.from, "26");
	const to = readPercent(form.to, "34");
	if (!madeFor.ok || !from.ok || !to.ok) {
		return err({
			...(madeFor.ok ? {} : { madeFor: madeFor.error }),
			...(from.ok ? {} : { from: from.error }),
			...(to.ok ? {} : { to: to.error }),
		});
	}
	if (from.value >= to.value) {
		return err({ to: calibrationWords().endsTooLow(exactPercent(from.value)) });
	}
	if (madeFor.value < from.value || madeFor.value > to.value) {
		const window = exactPercentRange(from.value, to.value);
		return err({ madeFor: calibrationWords().outsideWindow(exactPercent(madeFor.value), window) });
	}
	return ok({
		name: form.name.trim() || usualName(form.madeFor),
		calibratedFor: fraction(madeFor.value),
		window: contentRange(from.value, to.value),
	});
}

/** Accepted chances to choose from. */
export const budgets: readonly Fraction[] = [0.2, 0.1, usualBudget, 0.02, 0.01].map(fraction);

export function budgetWords(budget: number): string {
	const one = Math.round(1 / budget);
	return Math.abs(budget * one - 1) < 1e-6 ? calibrationWords().oneIn(one) : exactPercent(budget);
}
