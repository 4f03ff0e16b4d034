/** Reports of cars with known tanks. */
import { replay } from "../../src/domain/estimator/replay";
import { modelVersion } from "../../src/domain/modelVersion";
import { formatLog } from "../../src/store/backup";
import type { ReportNote } from "../../src/store/report";
import type { Log } from "../../src/store/wire";
import { aCalibration, aCar, aFill, aStart, aTankReading } from "./logs";

const dayMs = 86_400_000;

/** A car whose tank was measured to be at a content so many days ago, three days after a fill. */
export function measuredCar(id: string, name: string, content: number, daysAgo: number, now: number): Log {
	const at = (days: number) => new Date(now - (daysAgo + days) * dayMs).toISOString();
	return {
		car: aCar({ id, name, calibrations: [aCalibration({ id: `${id} e30` })] }),
		events: [
			aStart({ id: `${id} start`, at: at(10), contents: { range: [content * 0.9, content * 1.1] } }),
			aFill({
				id: `${id} fill`,
				stop: `${id} stop`,
				at: at(3),
				litres: 6,
				product: { id: "drum", range: [content * 0.95, content * 1.05] },
			}),
			aTankReading({ id: `${id} reading`, at: at(0), value: content, sd: 0.01 }),
		],
	};
}

/** What the app would say of it; `says` changes what it says. */
export function noteOf({ car, events }: Log, made: string, says: Partial<ReportNote["says"]> = {}): ReportNote {
	const last = [...replay(car, events)].at(-1);
	if (!last) throw new Error("a report needs an entry");
	const { median, low, high, below, above } = last.estimate;
	return {
		made,
		app: "0.9.0",
		model: modelVersion,
		says: {
			figures: { median, low, high, below, above },
			calibration: last.calibration?.id ?? null,
			surprise: last.surprise,
			grave: false,
			last: last.event.at,
			...says,
		},
	};
}

export function reportText(log: Log, made: string, says?: Partial<ReportNote["says"]>): string {
	return formatLog(log, noteOf(log, made, says));
}
