import { toLitres, type VolumeUnit } from "../../domain/units";
import type { DraftPour } from "../fillDraft";
import { type Guided, plannedAmount } from "../fillPlan";
import { exactVolume } from "../format";
import { clickedWords, orderWords, pourWords, restWords } from "../planWords";

interface GuidedPourProps {
	readonly guided: Guided;
	/** The pour that is being typed. */
	readonly open: DraftPour;
	/** As typed, L; 0 while nothing usable is typed. */
	readonly amount: number;
	/** Of the plan's first pour, L; 0 before it is settled. */
	readonly poured: number;
	readonly unit: VolumeUnit;
	readonly onTake: (typed: string) => void;
	readonly onLeave: () => void;
}

/** What to pump now, what comes after it, and why in this order. */
export function GuidedPour({ guided, open, amount, poured, unit, onTake, onLeave }: GuidedPourProps) {
	const { plan, step, pour, next, clicked } = guided;
	const { rest } = plan;
	const asPlanned = plannedAmount(pour, unit);
	const anew = restWords(guided, step === 0 ? amount : poured, unit);
	const order = step === 0 && next ? orderWords(plan.made) : null;
	const single = plan.made.pours.length === 1;
	return (
		<section class="card guide" aria-label="The plan">
			<h2 aria-live="polite">
				{single ? "Now" : step === 0 ? "First" : "Then"}: {pourWords(pour, unit)}
			</h2>
			{anew !== null && (
				<p role="status">
					<strong>{anew}</strong>
				</p>
			)}
			{rest?.kind === "planned" && rest.planned.verdict === "lean" && (
				<p class="fault">No amount keeps the lean risk as low as asked any more: this one is the least risky.</p>
			)}
			{next && <p>Then {pourWords(next, unit)}, reckoned anew from what goes in now.</p>}
			{order !== null && <p>{order}</p>}
			{clicked && amount > 0 && <p class="fault">{clickedWords(pour.litres, amount, unit)}</p>}
			{pour.toClick ? (
				<p>Let it click once, then type what the pump shows.</p>
			) : (
				<button
					type="button"
					class="button main"
					aria-pressed={open.typed === asPlanned}
					onClick={() => onTake(asPlanned)}
				>
					{open.typed === asPlanned ? "✓ " : ""}
					{exactVolume(toLitres(Number(asPlanned), unit), unit)}, as planned
				</button>
			)}
			<button type="button" class="button wide" onClick={onLeave}>
				Leave the plan
			</button>
		</section>
	);
}
