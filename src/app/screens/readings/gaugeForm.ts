/** A look at the gauge as a person notes it. */
import type { LevelEvent } from "../../../domain/event";
import { fraction } from "../../../domain/quantity";
import { err, ok } from "../../../domain/result";
import type { VolumeUnit } from "../../../domain/units";
import { type Read, type ReadingContext, together, type Unrecorded } from "../../readingDraft";
import { readOdometer } from "../../stopDetails";
import { gaugeLookWords } from "../../words/gaugeLook";

export interface GaugeForm {
	/** Fraction of the tank; null: not set yet. */
	readonly gauge: number | null;
	readonly odometer: string;
	/** Its miles or kilometres go with it. */
	readonly unit: VolumeUnit;
}

export function emptyGauge({ unit }: ReadingContext): GaugeForm {
	return { gauge: null, odometer: "", unit };
}

export function readGauge(form: GaugeForm): Read<GaugeForm, Unrecorded<LevelEvent>> {
	const read = together({
		gauge: form.gauge === null ? err(gaugeLookWords().missing) : ok(fraction(form.gauge)),
		odometer: readOdometer(form.odometer, form.unit),
	});
	if (!read.ok) return read;
	const { gauge, odometer } = read.value;
	return ok({ kind: "level", gauge, ...(odometer === null ? {} : { odometerKm: odometer }) });
}
