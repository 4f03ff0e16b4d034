/** A reading as it is being put right. */
import type { Product, ReadingEvent, TrimReading } from "../domain/event";
import { fraction } from "../domain/quantity";
import { err, ok, type Result } from "../domain/result";
import { readPercent, typedPercent } from "./numberWords";
import { readSd, together } from "./readingDraft";
import { readShown, type Scale } from "./shownByte";
import { entryScreenWords } from "./words/entry";
import { methodsWords } from "./words/methods";

export interface ReadingCorrection {
	/** Percent; of a trim with its sign. */
	readonly value: string;
	readonly sd: string;
	/** How it was measured; may be empty. */
	readonly method: string;
	/** Of a trim. */
	readonly calibratedFor: string;
	/** Of a sample from a pump. */
	readonly place: string | null;
	readonly product: Product | null;
	/** ISO 8601 with offset; null: now. */
	readonly at: string | null;
}

/** A correction half-typed, as it lies on the disk. */
export interface CorrectionDraft {
	/** The id that the new event will have. */
	readonly id: string;
	readonly form: ReadingCorrection;
}

/** A stored draft, if that is what it is. */
export function readCorrectionDraft(raw: unknown): CorrectionDraft | null {
	const draft = raw as Partial<CorrectionDraft> | null | undefined;
	return typeof draft?.id === "string" && draft.form ? (draft as CorrectionDraft) : null;
}

export type ReadingFaults = Partial<Record<keyof ReadingCorrection, string>>;

/** What a log may hold: see the log's format. */
const trims: Scale = {
	pids: [],
	ofByte: () => 0,
	least: -0.9,
	most: 9,
	example: { percent: "-3.1", byte: "" },
};

export function readingCorrectionOf(event: ReadingEvent): ReadingCorrection {
	return {
		value: typedPercent(event.value),
		sd: typedPercent(event.sd),
		method: methodsWords().told(event.method ?? ""),
		calibratedFor: event.of === "trim" ? typedPercent(event.calibratedFor) : "",
		place: event.of === "pump" ? event.place : null,
		product: event.of === "pump" ? event.product : null,
		at: event.at,
	};
}

/** The event to put in the place of the old one, or what is wrong beside which field. What was not touched stays exact. */
export function readReadingCorrection(
	form: ReadingCorrection,
	old: ReadingEvent,
	id: string,
	now: string,
): Result<ReadingEvent, ReadingFaults> {
	const shown = readingCorrectionOf(old);
	const kept = (field: "value" | "sd" | "calibratedFor", exact: number, read: () => Result<number, string>) =>
		form[field] === shown[field] ? ok(exact) : read();
	const read = together({
		value: kept("value", old.value, () => (old.of === "trim" ? trimValue(form.value) : readPercent(form.value, "30"))),
		sd: kept("sd", old.sd, () => readSd(form.sd, "2.5")),
		calibratedFor:
			old.of === "trim" ? kept("calibratedFor", old.calibratedFor, () => readPercent(form.calibratedFor, "30")) : ok(0),
	});
	if (!read.ok) return read;
	const { value, sd, calibratedFor } = read.value;
	const { method: _, ...kind } = old;
	const method = form.method === shown.method ? (old.method ?? "") : form.method.trim();
	const measured = { id, at: form.at ?? now, sd, ...(method === "" ? {} : { method }) };
	switch (kind.of) {
		case "tank":
			return ok({ ...kind, ...measured, value: fraction(value) });
		case "trim":
			return ok({ ...kind, ...measured, ...baselinePart(kind, sd), value, calibratedFor: fraction(calibratedFor) });
		case "pump": {
			const { place } = form;
			if (place === null) return err({ place: entryScreenWords().form.noPlace });
			return ok({ ...kind, ...measured, value: fraction(value), place, product: form.product ?? kind.product });
		}
	}
}

/** The same share of the uncertainty is the car's own. */
function baselinePart({ sd: before, baselineSd }: Pick<TrimReading, "sd" | "baselineSd">, sd: number) {
	return baselineSd === undefined ? {} : { baselineSd: baselineSd * (sd / before) };
}

function trimValue(typed: string): Result<number, string> {
	const read = readShown(typed, "percent", trims);
	return read.ok ? ok(read.value.value) : read;
}
