/** Looking ahead from an open account. What does not change from key to key is reckoned once. */
import { type Absorbed, absorb } from "../domain/estimator/absorb";
import type { Belief } from "../domain/estimator/belief";
import { type Estimate, estimateOf } from "../domain/estimator/estimate";
import { outlookOf, type Pour } from "../domain/estimator/outlook";
import { prepared } from "../domain/estimator/resample";
import { smallSample } from "../domain/estimator/sampleSize";
import type { Outlook } from "../domain/estimator/stretch";
import type { FillEvent, LogEvent } from "../domain/event";
import type { ContentRange } from "../domain/quantity";
import { seedsFor } from "../domain/random";
import type { Calibration, Car } from "../domain/vehicle";
import { type Checkpoint, type Prepared, preparedLog, type Replayed, reached } from "./accounts";
import { mendFor } from "./mend";
import type { DraftStop, Preview } from "./view";

/** The account as it stood before the stop that is being typed. */
interface Base {
	readonly start: Belief;
	readonly before: Estimate;
	readonly calibration: Calibration | null;
	readonly counting: readonly LogEvent[];
}

/** The account with what was poured at a stop so far, for planning the rest of it. */
export interface AtPump {
	readonly belief: Belief;
	readonly calibration: Calibration | null;
	/** Events that count, the poured fills last. */
	readonly counting: readonly LogEvent[];
}

type Poured = Pick<Absorbed, "belief" | "surprise">;

/** Sample of a quick answer: a few milliseconds, and off by less than a point. */
const quickSample = 2 ** 13;

/** Answers for one state of the log. `stored` finds a point on the disk from which another log's account can go on. */
export function previewsOf(car: Car, replay: Replayed, stored: (log: Prepared) => Promise<Checkpoint[]>) {
	const [quick, exact] = [quickSample, smallSample].map((size) => answersOf(car, replay, stored, size));
	return {
		preview: (draft: DraftStop): Promise<Preview> => (draft.quick ? quick : exact).preview(draft),
		atPump: exact.atPump,
	};
}

function answersOf(
	car: Car,
	{ log, checkpoint, recent }: Replayed,
	stored: (log: Prepared) => Promise<Checkpoint[]>,
	size: number,
) {
	const newest = Math.max(...log.counting.map(({ at }) => Date.parse(at)));
	const baseOnce = remembered(async (instead: readonly string[], until: string | null): Promise<Base> => {
		const all = instead.length === 0 && until === null;
		const counted = (event: LogEvent) =>
			!instead.includes(event.id) && (until === null || Date.parse(event.at) <= Date.parse(until));
		const earlier = all ? log : preparedLog(car, log.counting.filter(counted));
		const { account } = all ? checkpoint : await reached(earlier, recent, stored);
		// A smaller sample than the kept one, where that is larger: it has to follow the typing.
		const start = prepared(account.belief, size, seedsFor("preview"));
		const { calibration } = account;
		return { start, before: estimateOf(start, calibration?.window ?? null), calibration, counting: earlier.counting };
	});
	const pouredOnce = remembered((start: Belief, ...fills: DraftStop["fills"]) =>
		fills.reduce<Poured>((before, fill) => poured(before, fill), { belief: start, surprise: null }),
	);
	/** What was odd about an earlier fill of the stop is still to be said. */
	function poured({ belief, surprise }: Poured, fill: FillEvent): Poured {
		const after = absorb(belief, fill, car.tank, size);
		return { belief: after.belief, surprise: after.surprise ?? surprise };
	}
	const outlookOnce = remembered(
		(belief: Belief, pour: Pour, window: ContentRange): Outlook => outlookOf(belief, pour, car.tank, window),
	);

	const baseAt = (instead: readonly string[], at: string | undefined) =>
		baseOnce(instead, at !== undefined && Date.parse(at) < newest ? at : null);
	async function atPump(fills: DraftStop["fills"], at: string, instead: readonly string[]): Promise<AtPump> {
		const { start, calibration, counting } = await baseAt(instead, fills[0]?.at ?? at);
		return { belief: pouredOnce(start, ...fills).belief, calibration, counting: [...counting, ...fills] };
	}

	async function preview(draft: DraftStop): Promise<Preview> {
		const { fills, next, instead } = draft;
		const base = await baseAt(instead, (fills[0] ?? next)?.at);
		const { start, before, calibration } = base;
		const window = calibration?.window ?? null;
		const last = fills.at(-1);
		const beforeLast = pouredOnce(start, ...fills.slice(0, -1));
		const { belief, surprise } = last ? poured(beforeLast, last) : beforeLast;
		const estimate = estimateOf(belief, window);
		const pour = next ?? (last && amountless(last));
		return {
			estimate,
			surprise,
			before,
			calibration,
			outlook: window && pour ? outlookOnce(next ? belief : beforeLast.belief, pour, window) : null,
			mend:
				draft.mend && last
					? mendFor(belief, estimate, calibration, car.tank, [...base.counting, ...fills], last.at)
					: null,
		};
	}
	return { preview, atPump };
}

function amountless({ kind, litres, toClick, pricePerLitre, ...pour }: FillEvent): Pour {
	return pour;
}

/** The function with its last answer kept; beliefs are told apart by identity, all else by contents. */
function remembered<Args extends readonly unknown[], Result>(
	work: (...args: Args) => Result,
): (...args: Args) => Result {
	let last: { readonly belief: unknown; readonly key: string; readonly result: Result } | null = null;
	return (...args) => {
		const belief = args.find((arg) => typeof arg === "object" && arg !== null && "weight" in arg);
		const key = JSON.stringify(args.filter((arg) => arg !== belief));
		if (!last || last.key !== key || last.belief !== belief) last = { belief, key, result: work(...args) };
		return last.result;
	};
}
