/**
 * A report as a file: the car's log, and beside it what was believed of the tank when it was made. The log is all that is ever
 * kept of it; what is said beside it is shown as said, until the entries were reckoned.
 */
import * as z from "zod/mini";
import type { Surprise } from "../domain/estimator/absorb";
import type { Estimate } from "../domain/estimator/estimate";
import { ok, type Result } from "../domain/result";
import { parseFile, readEnvelope } from "./backup";
import { badAt, check, type LogError } from "./logError";
import type { Must } from "./must";
import { aFraction, aTime, type Log, label } from "./wire";

/** An estimate in five numbers. */
export type Chances = Pick<Estimate, "median" | "low" | "high" | "below" | "above">;

/** What a report says of the tank. */
export interface Said {
	readonly figures: Chances;
	/** Id of the calibration in force; null: none. */
	readonly calibration: string | null;
	/** What was odd about the last entry. */
	readonly surprise: Surprise | null;
	/** The last entries contradict each other. */
	readonly grave: boolean;
	/** Of the last entry that concerns the tank, ISO 8601. */
	readonly last: string;
}

export interface ReportNote {
	/** When it was made, ISO 8601 with offset. */
	readonly made: string;
	/** Versions of the app and of its model. */
	readonly app: string;
	readonly model: number;
	readonly says: Said;
}

/** `note`: null in a plain log. */
export interface Report {
	readonly log: Log;
	readonly note: ReportNote | null;
}

const must = (be: Must): Must => be;
const aChance = z.nullable(aFraction);
const surpriseSchema = z.discriminatedUnion(
	"kind",
	[
		z.object({ kind: z.literal("disagrees"), chance: aFraction }),
		z.object({ kind: z.literal("impossibleLevel") }),
		z.object({ kind: z.literal("impossibleDistance") }),
	],
	must("report"),
);

const figuresSchema = z
	.object({ median: aFraction, low: aFraction, high: aFraction, below: aChance, above: aChance }, must("report"))
	.check(
		z.refine(
			({ low, median, high, below, above }) =>
				low <= median &&
				median <= high &&
				(below === null) === (above === null) &&
				// Both come from sums that round in the last places.
				(below ?? 0) + (above ?? 0) <= 1 + 1e-6,
			must("report"),
		),
	);

const noteSchema: z.ZodMiniType<ReportNote, unknown> = z.object(
	{
		made: aTime,
		app: label,
		model: z.number(must("report")).check(z.gte(1), z.lte(1e6), z.multipleOf(1)),
		says: z.object(
			{
				figures: figuresSchema,
				calibration: z.nullable(z.string(must("report"))),
				surprise: z.nullable(surpriseSchema),
				grave: z.boolean(must("yesOrNo")),
				last: aTime,
			},
			must("report"),
		),
	},
	must("report"),
);

/** Reads a report, or a plain log; never throws. All of it or nothing. */
export function parseReport(text: string): Result<Report, LogError> {
	const file = parseFile(text);
	if (!file.ok) return file;
	const log = readEnvelope(file.value);
	if (!log.ok) return log;
	if (!Object.hasOwn(file.value, "report")) return ok({ log: log.value, note: null });
	const note = check(noteSchema, file.value.report, ["report"], file.value);
	if (!note.ok) return note;
	const { calibration } = note.value.says;
	if (calibration !== null && !log.value.car.calibrations.some(({ id }) => id === calibration))
		return { ok: false, error: badAt(file.value, ["report", "says", "calibration"], "knownCalibration") };
	return ok({ log: log.value, note: note.value });
}
