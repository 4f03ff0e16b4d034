/** A start or a gauge note as it is being put right. */
import type { Contents, LevelEvent, LogEvent, StartEvent } from "../domain/event";
import { contentRange, type Fraction, fraction } from "../domain/quantity";
import { err, ok, type Result } from "../domain/result";
import type { VolumeUnit } from "../domain/units";
import { exactPercent } from "./format";
import { readPercent, readPoints, typedPercent } from "./numberWords";
import { readOdometer, typedOdometer } from "./stopDetails";
import { typedNumber } from "./typedNumber";
import { entryScreenWords } from "./words/entry";
import { numbersWords } from "./words/numbers";

export type Correctable = StartEvent | LevelEvent;

export function isCorrectable(event: LogEvent): event is Correctable {
	return event.kind === "start" || event.kind === "level";
}

export interface CorrectionForm {
	readonly vouched: "limits" | "measured";
	readonly low: string;
	readonly high: string;
	readonly measured: string;
	readonly sd: string;
	readonly gauge: number | null;
	/** In miles where fuel is counted in gallons; nothing: not noted. */
	readonly odometer: string;
}

export type CorrectionFaults = Partial<Record<"low" | "high" | "measured" | "sd" | "gauge" | "odometer", string>>;

export function correctionOf(event: Correctable, unit: VolumeUnit): CorrectionForm {
	const limits = { vouched: "limits", low: "", high: "", measured: "", sd: typedNumber(2.5) } as const;
	const form = { ...limits, gauge: event.gauge ?? null, odometer: "" };
	if (event.kind === "level") return { ...form, odometer: typedOdometer(event.odometerKm, unit) };
	const { contents } = event;
	if ("range" in contents)
		return { ...form, low: typedPercent(contents.range[0]), high: typedPercent(contents.range[1]) };
	return { ...form, vouched: "measured", measured: typedPercent(contents.value), sd: typedPercent(contents.sd) };
}

/** The event to put in the place of the old one, at the same time, or what is wrong beside which field. */
export function readCorrection(
	form: CorrectionForm,
	old: Correctable,
	id: string,
	unit: VolumeUnit,
): Result<Correctable, CorrectionFaults> {
	const gauge = form.gauge === null ? null : fraction(form.gauge);
	if (old.kind === "level") return readLevel(form, old, id, unit);
	const contents = readContents(form);
	if (!contents.ok) return contents;
	const { gauge: _, ...rest } = old;
	return ok({ ...rest, id, contents: contents.value, ...(gauge === null ? {} : { gauge: gauge satisfies Fraction }) });
}

function readLevel(
	form: CorrectionForm,
	old: LevelEvent,
	id: string,
	unit: VolumeUnit,
): Result<LevelEvent, CorrectionFaults> {
	// Shown rounded; what was not touched stays exact.
	const untouched = form.odometer === typedOdometer(old.odometerKm, unit);
	const odometer = untouched ? ok(old.odometerKm ?? null) : readOdometer(form.odometer, unit);
	if (form.gauge === null) return err({ gauge: entryScreenWords().form.noGauge });
	if (!odometer.ok) return err({ odometer: odometer.error });
	const { odometerKm: _, ...rest } = old;
	const noted = odometer.value === null ? {} : { odometerKm: odometer.value };
	return ok({ ...rest, id, gauge: fraction(form.gauge), ...noted });
}

function readContents(form: CorrectionForm): Result<Contents, CorrectionFaults> {
	if (form.vouched === "measured") {
		const measured = readPercent(form.measured, "30");
		const sd = readPoints(form.sd);
		if (measured.ok && sd.ok) return ok({ value: fraction(measured.value), sd: sd.value / 100 });
		return err({ ...(measured.ok ? {} : { measured: measured.error }), ...(sd.ok ? {} : { sd: sd.error }) });
	}
	const low = readPercent(form.low, "25");
	const high = readPercent(form.high, "35");
	if (!low.ok || !high.ok)
		return err({ ...(low.ok ? {} : { low: low.error }), ...(high.ok ? {} : { high: high.error }) });
	if (low.value > high.value) return err({ high: numbersWords().swapped(exactPercent(low.value)) });
	return ok({ range: contentRange(low.value, high.value) });
}
