/** Reports of others' tanks: what they say, and what their entries come to. Nothing of them is kept. */
import { countingEvents, isTankEvent } from "../domain/event";
import { modelVersion } from "../domain/modelVersion";
import { ok, type Result } from "../domain/result";
import type { LogError } from "../store/logError";
import { parseReport, type Report } from "../store/report";
import type { Store } from "../store/store";
import { mostReckoned } from "./accounts";
import type { Ways } from "./fleet";
import { glanceOf } from "./fleet";
import type { Glance } from "./glance";

export interface ReportRead {
	/** As the report says; of a plain log, which says nothing, without figures. */
	readonly glance: Glance;
	/** When it was made, and by which app; null: a plain log. */
	readonly made: { readonly at: string; readonly app: string; readonly otherModel: boolean } | null;
	readonly entries: number;
	/** Whether this phone has the car. */
	readonly here: boolean;
}

/** What a report says, without reckoning it. */
export async function readReport(store: Store, text: string): Promise<Result<ReportRead, LogError>> {
	const report = parseReport(text);
	if (!report.ok) return report;
	const { log, note } = report.value;
	return ok({
		glance: saidBy(report.value),
		made: note && { at: note.made, app: note.app, otherModel: note.model !== modelVersion },
		entries: log.events.length,
		here: (await store.cars()).some(({ id }) => id === log.car.id),
	});
}

/** What its entries come to; null where that takes too long. */
export async function checkReport(text: string, ways: Ways): Promise<Glance | null> {
	const report = parseReport(text);
	if (!report.ok) return null;
	const { car, events } = report.value.log;
	if (countingEvents(events).filter(isTankEvent).length > mostReckoned) return null;
	const state = await ways.reckon(car, events);
	const now = ways.nowOf(car, state);
	const found = now?.odd ? await ways.contradictionOf(car, state) : null;
	return glanceOf(car, now, found?.grave ?? false);
}

function saidBy({ log: { car }, note }: Report): Glance {
	const bare = glanceOf(car, null, false);
	if (!note) return bare;
	const { figures, calibration, surprise, grave, last } = note.says;
	const inForce = car.calibrations.find(({ id }) => id === calibration) ?? null;
	return { ...bare, figures, calibration: inForce, surprise, grave, lastAt: last };
}
