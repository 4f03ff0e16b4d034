/** The car's own report of its fuel as a scan tool shows it. */
import type { TankReading } from "../../../domain/event";
import { fraction } from "../../../domain/quantity";
import { ethanolOfByte, ethanolPid } from "../../../domain/readings/obd";
import { ok } from "../../../domain/result";
import { type Read, type ReadingContext, readSd, together, type Unrecorded } from "../../readingDraft";
import { readShown, type Scale, type ShownAs } from "../../shownByte";

export interface ReportedForm {
	readonly shownAs: ShownAs;
	readonly shown: string;
	readonly source: "sensor" | "inferred";
	readonly sd: string;
}

export const reportedScale: Scale = {
	pids: [ethanolPid],
	ofByte: ethanolOfByte,
	least: 0,
	most: 1,
	example: { percent: "30.2", byte: "4D" },
};

export function emptyReported({ usual }: ReadingContext): ReportedForm {
	return { shownAs: "percent", shown: "", source: "inferred", sd: usual("inferred") };
}

/** The uncertainty follows the source until the driver has typed another. */
export function withSource(
	form: ReportedForm,
	source: ReportedForm["source"],
	usual: ReadingContext["usual"],
): ReportedForm {
	return { ...form, source, sd: form.sd === usual(form.source) ? usual(source) : form.sd };
}

export function readReported(form: ReportedForm): Read<ReportedForm, Unrecorded<TankReading>> {
	const read = together({ shown: readShown(form.shown, form.shownAs, reportedScale), sd: readSd(form.sd, "8") });
	if (!read.ok) return read;
	const { shown, sd } = read.value;
	const method = `the car’s own report (PID ${ethanolPid})`;
	return ok({ kind: "reading", of: "tank", value: fraction(shown.value), sd, method });
}
