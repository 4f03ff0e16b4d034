import { toLitres, type VolumeUnit } from "../../domain/units";
import type { DraftPour } from "../fillDraft";
import { type Guided, plannedAmount } from "../fillPlan";
import { exactVolume } from "../format";
import { beforeDrivingWords, clickedWords, orderWords, outdatedWords, pourWords, restWords } from "../planWords";
import { productName } from "../text";
import { fillWords } from "../words/fill";

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
	const { plan, step, pour, next, clicked, changed } = guided;
	const { rest } = plan;
	const words = fillWords();
	const asPlanned = plannedAmount(pour, unit);
	const outdated = changed.length > 0;
	const anew = outdated ? null : restWords(guided, step === 0 ? amount : poured, unit);
	const order = step === 0 && next && !outdated ? orderWords(plan.made) : null;
	const beforeDriving = step > 0 || next ? beforeDrivingWords(plan.made) : null;
	const what = outdated ? productName(pour.product) : pourWords(pour, unit);
	const single = plan.made.pours.length === 1;
	return (
		<section class="card guide" aria-label={words.guide}>
			<h2 aria-live="polite">
				{single ? words.pourNow(what) : step === 0 ? words.pourFirst(what) : words.pourThen(what)}
			</h2>
			{outdated && (
				<>
					<p class="fault" role="status">
						{outdatedWords(changed, next ? [pour, next] : [pour], unit)}
					</p>
					<a class="button wide" href="#/plan">
						{words.planAnew}
					</a>
				</>
			)}
			{anew !== null && (
				<p role="status">
					<strong>{anew}</strong>
				</p>
			)}
			{!outdated && rest?.kind === "planned" && rest.planned.verdict === "lean" && (
				<p class="fault">{words.leastRisky}</p>
			)}
			{next && !outdated && <p>{words.thenAnew(pourWords(next, unit))}</p>}
			{order !== null && <p>{order}</p>}
			{beforeDriving !== null && (
				<p>
					<strong>{beforeDriving}</strong>
				</p>
			)}
			{clicked && amount > 0 && <p class="fault">{clickedWords(pour.litres, amount, unit)}</p>}
			{pour.toClick ? (
				<p>{words.clickOnce}</p>
			) : outdated ? null : (
				<button
					type="button"
					class="button main"
					aria-pressed={open.typed === asPlanned}
					onClick={() => onTake(asPlanned)}
				>
					{open.typed === asPlanned ? "✓ " : ""}
					{words.asPlanned(exactVolume(toLitres(Number(asPlanned.replace(",", ".")), unit), unit))}
				</button>
			)}
			<button type="button" class="button wide" onClick={onLeave}>
				{words.leavePlan}
			</button>
		</section>
	);
}
