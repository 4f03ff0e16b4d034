/** A calibration form half-typed, as it lies on the disk. */
import { fraction } from "../domain/quantity";
import type { Calibration } from "../domain/vehicle";
import { usualBudget } from "../domain/warnings";
import { type CalibrationForm, calibrationFormOf, emptyCalibration } from "./calibrationForm";
import { typedPercent } from "./numberWords";

/** What is typed, and which calibration it changes. */
export interface CalibrationDraft {
	/** Null: a new one. */
	readonly of: string | null;
	/** The id it will have; stays through failures, so that a second try makes no second one. */
	readonly id: string;
	readonly form: CalibrationForm;
	readonly lean: string;
	readonly knock: string;
	readonly flashed: boolean;
	/** The upper edge that the fuel-system card proposed, as it stood in the field. */
	readonly proposedTo?: string;
}

/** Under this it is in the store. */
export function calibrationDraftKey(carId: string): string {
	return `${carId}/calibration`;
}

export function emptyCalibrationDraft(id: string, old: Calibration | null, first: boolean): CalibrationDraft {
	return {
		of: old?.id ?? null,
		id,
		form: old ? calibrationFormOf(old) : emptyCalibration,
		lean: String(old?.leanBudget ?? usualBudget),
		knock: String(old?.knockBudget ?? usualBudget),
		flashed: first,
	};
}

/** A stored draft, if it is one of this calibration. */
export function readCalibrationDraft(raw: unknown, old: Calibration | null): CalibrationDraft | null {
	const draft = raw as Partial<CalibrationDraft> | null | undefined;
	const mine = typeof draft?.id === "string" && draft.form && draft.of === (old?.id ?? null);
	return mine ? (draft as CalibrationDraft) : null;
}

/** With an upper edge to think about, in tenths of a percent and never above `content`. */
export function withProposedEdge(draft: CalibrationDraft, content: number): CalibrationDraft {
	const proposedTo = typedPercent(flooredEdge(content));
	return { ...draft, form: { ...draft.form, to: proposedTo, assumed: false }, proposedTo };
}

/** A content in full tenths of a percent, towards less ethanol. */
export function flooredEdge(content: number): number {
	return fraction(Math.floor(content * 1000) / 1000);
}
