/** Fuel trims as a scan tool shows them. */
import type { TrimReading } from "../../../domain/event";
import { type Fraction, fraction } from "../../../domain/quantity";
import { trimOfByte } from "../../../domain/readings/obd";
import { type BankTrims, baselineShare, combinedTrim } from "../../../domain/readings/trims";
import { err, ok } from "../../../domain/result";
import { readPercent } from "../../numberWords";
import { type Faults, type Read, type ReadingContext, readSd, together, type Unrecorded } from "../../readingDraft";
import { readShown, type Scale, type ShownAs } from "../../shownByte";
import { trimsWords } from "../../words/trims";

export interface TrimForm {
	readonly shownAs: ShownAs;
	readonly banks: "1" | "2";
	readonly short1: string;
	readonly long1: string;
	readonly short2: string;
	readonly long2: string;
	readonly calibratedFor: string;
	/** What it was filled in with; unknown in older drafts. */
	readonly flashed?: string;
	readonly sd: string;
}

export const trimFields = ["short1", "long1", "short2", "long2"] as const;

/** Short and long term of two banks; J1979 leaves -100 to 99.2 %, and no engine runs near either end. */
export const trimScales: Readonly<Record<(typeof trimFields)[number], Scale>> = {
	short1: trimScale("06"),
	long1: trimScale("07"),
	short2: trimScale("08"),
	long2: trimScale("09"),
};

function trimScale(pid: string): Scale {
	return { pids: [pid], ofByte: trimOfByte, least: -1, most: 127 / 128, example: { percent: "-3.1", byte: "7C" } };
}

export function emptyTrim({ usual }: ReadingContext, calibratedFor: string): TrimForm {
	const trims = { short1: "", long1: "", short2: "", long2: "" };
	return {
		shownAs: "percent",
		banks: "1",
		...trims,
		calibratedFor,
		flashed: calibratedFor,
		sd: usual("trim"),
	};
}

/** What it is calibrated for follows the flashed calibration until the driver has typed another. */
export function withFlashed(form: TrimForm, flashed: string): TrimForm {
	return form.calibratedFor === form.flashed ? { ...form, calibratedFor: flashed, flashed } : form;
}

export interface TrimRead {
	/** Combined trim over the banks. */
	readonly trim: number;
	readonly spread: number;
	readonly sd: number;
	readonly calibratedFor: Fraction;
	readonly longTerms: readonly number[];
}

export function readTrims(form: TrimForm): Read<TrimForm, TrimRead> {
	const shown = (field: (typeof trimFields)[number]) => readShown(form[field], form.shownAs, trimScales[field]);
	const first = { short1: shown("short1"), long1: shown("long1") };
	const both = form.banks === "1" ? first : { ...first, short2: shown("short2"), long2: shown("long2") };
	const read = together({
		...both,
		calibratedFor: readPercent(form.calibratedFor, "30"),
		sd: readSd(form.sd, "3"),
	});
	if (!read.ok) return read as { readonly ok: false; readonly error: Faults<TrimForm> };
	const { short1, long1, short2, long2, sd, calibratedFor } = { short2: null, long2: null, ...read.value };
	const banks: BankTrims[] = [{ shortTerm: short1.value, longTerm: long1.value }];
	if (short2 && long2) banks.push({ shortTerm: short2.value, longTerm: long2.value });
	const { trim, spread } = combinedTrim(banks);
	if (trim < -0.9) return err({ long1: trimsWords().tooLow });
	const longTerms = banks.map(({ longTerm }) => longTerm);
	return ok({ trim, spread, sd, calibratedFor: fraction(calibratedFor), longTerms });
}

export function readTrimReading(form: TrimForm): Read<TrimForm, Unrecorded<TrimReading>> {
	const read = readTrims(form);
	if (!read.ok) return read;
	const { trim: value, sd, calibratedFor } = read.value;
	const baselineSd = baselineShare * sd;
	return ok({ kind: "reading", of: "trim", value, sd, baselineSd, calibratedFor, method: "scan tool" });
}
