/** What the screens are given of an account. */
import type { Doubt } from "../domain/doubt/explanation";
import type { Surprise } from "../domain/estimator/absorb";
import type { Estimate, LevelEstimate } from "../domain/estimator/estimate";
import type { Pour } from "../domain/estimator/outlook";
import type { Outlook } from "../domain/estimator/stretch";
import type { FillEvent, LogEvent, Product, TankEvent } from "../domain/event";
import type { Drive, Stage } from "../domain/plan/ahead";
import type { Fullness, Handling, Offer, Planned, Unplannable, Visit } from "../domain/plan/request";
import type { Fraction, Litres } from "../domain/quantity";
import type { Result } from "../domain/result";
import type { Calibration, Car } from "../domain/vehicle";

/** An estimate without its drawing. */
export type Figures = Omit<Estimate, "dots">;

/** One line of the account: an event and what was believed after it. */
export interface LogLine {
	readonly event: TankEvent;
	readonly figures: Figures;
	readonly surprise: Surprise | null;
	/** Worth a closer look together with what went before, see `Contradiction`. */
	readonly odd: boolean;
}

/** The tank as it stands. Small enough to be kept and shown before the log is read. */
export interface TankNow {
	readonly estimate: Estimate;
	readonly level: LevelEstimate;
	readonly calibration: Calibration | null;
	/** The last event that changed or observed the tank, and what was odd about it. */
	readonly last: TankEvent;
	readonly surprise: Surprise | null;
	/** The fills of the last stop, if the last event belongs to one. */
	readonly lastStop: readonly FillEvent[];
	/** Median content before that event or stop; null at the start of the account. */
	readonly medianBefore: number | null;
	readonly mend: Mend | null;
	/** Something about the last entries is odd: ask for the contradiction. */
	readonly odd: boolean;
}

/** The last entries contradict each other. */
export interface Contradiction {
	readonly doubt: Doubt;
	/** Not to be relied on until it is settled; false: one entry disagrees, as one in a hundred good ones does. */
	readonly grave: boolean;
	/** Entries that were called out by themselves, in order. */
	readonly surprises: readonly { readonly event: TankEvent; readonly surprise: Surprise }[];
	/** All entries that were gone through, in order. */
	readonly entries: readonly TankEvent[];
}

/** What could be added to the tank as it stands to come nearer the window. */
export interface Mend {
	readonly product: Product;
	/** Amounts between which both chances are accepted, L; null: none brings that. */
	readonly between: readonly [from: Litres, to: Litres] | null;
	/** The best that can be had of it, and the chance of then being inside; null: adding it does no good. */
	readonly best: { readonly amount: Litres; readonly inside: number } | null;
}

export interface AccountView {
	readonly car: Car;
	/** Number of events on the device when this was made. */
	readonly count: number;
	/** Null while the log holds nothing about the tank. */
	readonly now: TankNow | null;
	/** Everything that counts, in order. */
	readonly lines: readonly LogLine[];
	/** All events, the void ones too, in order. */
	readonly events: readonly LogEvent[];
	/** Events that only a newer version of the app can read. */
	readonly unreadable: number;
}

/** A stop as typed so far. */
export interface DraftStop {
	/** Fills with their amounts, in order. */
	readonly fills: readonly FillEvent[];
	/** The next product, its amount still open. */
	readonly next: Pour | null;
	/** Events this stop is going to replace. */
	readonly instead: readonly string[];
	/** A quick answer, of fewer particles than saving will show. */
	readonly quick?: boolean;
	/** Whether to reckon what would mend it, too. */
	readonly mend?: boolean;
}

export interface Preview {
	/** After the fills as typed; null while the log is empty. */
	readonly estimate: Estimate;
	/** What was odd about what was typed. */
	readonly surprise: Surprise | null;
	/** Before the stop. */
	readonly before: Estimate;
	readonly calibration: Calibration | null;
	/** What every amount of the last product would lead to; null without a window or a product. */
	readonly outlook: Outlook | null;
	/** What to add after these fills to come nearer the window; null where they keep inside, or it was not asked for. */
	readonly mend: Mend | null;
}

/** "How much of each?", asked at a pump. */
export interface PlanAsk {
	readonly visit: Visit;
	/** What was poured at this stop already, in order. */
	readonly poured: readonly FillEvent[];
	/** Events this stop is going to replace. */
	readonly instead: readonly string[];
	readonly offers: readonly Offer[];
	/** Of the pours still to come. */
	readonly fullness: Fullness;
	/** Calibration to pump for, by its id; null: the flashed one. */
	readonly targetCalibration: string | null;
	readonly handling: Handling;
	/** Ids that the planned fills will get, one a pour still to come: the plan then agrees with the account after saving. */
	readonly ids: readonly string[];
	/** Whether to reckon what else could be done, where no plan comes inside: ten times the work. */
	readonly otherwise?: boolean;
}

export interface PlanAnswer {
	readonly planned: Result<Planned, Unplannable>;
	/** What the plan was made for. */
	readonly calibration: Calibration;
	/** Twenty equally likely contents after it; null without a plan. */
	readonly dots: readonly Fraction[] | null;
	/** What else could be done, where it was asked for and no plan comes inside. */
	readonly otherwise: Otherwise | null;
}

export interface Otherwise {
	/** Least to burn before this stop for a plan inside, L; null where none is even then. */
	readonly burnFirst: Litres | null;
	/** Distance on which the car burns that, km; null where its consumption is unknown. */
	readonly burnKm: number | null;
	/** This stop and the next ones, as far as it takes to come inside; the last may not be. Empty where not even this one can be planned. */
	readonly stages: readonly Stage[];
	/** How the car comes from one of them to the next. */
	readonly drive: Drive;
}
