/** A reading of an ethanol analyser as a person types it. */
import type { TankReading } from "../../../domain/event";
import { fraction } from "../../../domain/quantity";
import { ok } from "../../../domain/result";
import { readPercent } from "../../numberWords";
import { type Read, type ReadingContext, readSd, together, type Unrecorded } from "../../readingDraft";

export interface AnalyserForm {
	readonly percent: string;
	readonly sd: string;
}

export function emptyAnalyser({ usual }: ReadingContext): AnalyserForm {
	return { percent: "", sd: usual("analyser") };
}

export function readAnalyser(form: AnalyserForm): Read<AnalyserForm, Unrecorded<TankReading>> {
	const read = together({ percent: readPercent(form.percent, "30"), sd: readSd(form.sd, "2.5") });
	if (!read.ok) return read;
	const { percent, sd } = read.value;
	return ok({ kind: "reading", of: "tank", value: fraction(percent), sd, method: "ethanol analyser" });
}
