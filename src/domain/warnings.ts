/** What to warn of, as data: the words are the screens' business. */
import type { Surprise } from "./estimator/absorb";
import type { Estimate } from "./estimator/estimate";
import type { Budgets } from "./estimator/stretch";
import type { Fraction } from "./quantity";
import type { Calibration } from "./vehicle";

/** Accepted chance on either side unless the calibration says otherwise: one in twenty. */
export const usualBudget = 0.05 as Fraction;

/** `likely`: more likely than not. `possible`: above what the calibration accepts. */
export type Severity = "possible" | "likely";

interface Side {
	readonly severity: Severity;
	readonly chance: number;
	readonly budget: number;
	/** The other side is within its budget: what mends this one can be said. */
	readonly alone: boolean;
}

export type Warning =
	/** Above the window: open-loop fuelling runs lean. */
	| ({ readonly code: "lean" } & Side)
	/** Below the window: the fuel may knock under the calibration's boost and timing. */
	| ({ readonly code: "knock" } & Side)
	/** The last entry's reading had only this chance. */
	| { readonly code: "disagrees"; readonly chance: number }
	/** What the last entry said of the level cannot be. */
	| { readonly code: "impossibleLevel" }
	/** The distance driven up to the last entry cannot be. */
	| { readonly code: "impossibleDistance" };

/** May the calibration's boost be used? */
export type Verdict = "yes" | "unsure" | "no" | "noWindow";

export function budgetsOf(calibration: Calibration | null): Budgets {
	return { lean: calibration?.leanBudget ?? usualBudget, knock: calibration?.knockBudget ?? usualBudget };
}

/** What is warned of by. */
type Chances = Pick<Estimate, "above" | "below">;

export function warningsFor(
	{ above, below }: Chances,
	calibration: Calibration | null,
	surprise: Surprise | null,
): Warning[] {
	const found: Warning[] = [];
	const { lean, knock } = budgetsOf(calibration);
	const tooLean = above !== null && above > lean;
	const tooWeak = below !== null && below > knock;
	if (tooLean) found.push({ code: "lean", severity: severityOf(above), chance: above, budget: lean, alone: !tooWeak });
	if (tooWeak)
		found.push({ code: "knock", severity: severityOf(below), chance: below, budget: knock, alone: !tooLean });
	// The graver side first; too lean before too weak where they tie.
	found.sort(
		(a, b) => Number("severity" in b && b.severity === "likely") - Number("severity" in a && a.severity === "likely"),
	);
	if (surprise?.kind === "disagrees") found.push({ code: "disagrees", chance: surprise.chance });
	if (surprise?.kind === "impossibleLevel" || surprise?.kind === "impossibleDistance") {
		found.push({ code: surprise.kind });
	}
	return found;
}

export function verdictOf(estimate: Chances, calibration: Calibration | null): Verdict {
	if (!calibration || estimate.above === null || estimate.below === null) return "noWindow";
	if (estimate.above > 0.5 || estimate.below > 0.5) return "no";
	const sides = warningsFor(estimate, calibration, null);
	if (sides.length === 0) return "yes";
	// Outside on one side or the other counts as outside, even where neither alone is likely.
	return estimate.above + estimate.below > 0.5 ? "no" : "unsure";
}

function severityOf(chance: number): Severity {
	return chance > 0.5 ? "likely" : "possible";
}
