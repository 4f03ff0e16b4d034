import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Plan, Planned } from "../../domain/plan/request";
import type { VolumeUnit } from "../../domain/units";
import type { PlanAnswer, PlanAsk } from "../../keeper/view";
import { DotPlot } from "../components/DotPlot";
import { exactPercentRange, inTwenty, percent, percentRange } from "../format";
import { later } from "../later";
import { money } from "../money";
import type { PlanFaults } from "../planForm";
import { orderWords, pourWords, unplannableWords, verdictLine } from "../planWords";
import type { PlanSource } from "../usePlan";
import { planScreenWords } from "../words/plan";
import { poursWords } from "../words/pours";
import { OtherWays } from "./OtherWays";

interface PlanCardProps {
	readonly carId: string;
	readonly plan: PlanSource;
	readonly faults: PlanFaults;
	readonly unit: VolumeUnit;
	readonly currency: string | undefined;
	/** Leads to the gauge; null where it is noted. */
	readonly onLook: (() => void) | null;
	readonly onPump: (ask: PlanAsk, plan: Plan) => void;
}

/** The answer: what to pump, what it leads to, and why; or what would have to change. */
export function PlanCard({ carId, plan: { shown, current }, faults, unit, currency, onLook, onPump }: PlanCardProps) {
	const words = planScreenWords();
	const missing = faults.amount ?? faults.money ?? (Object.keys(faults).length > 0 ? words.mendBelow : null);
	if (missing !== null) return <Unplanned words={missing} busy={false} />;
	if (!shown) return <p class="soft">{words.reckoning}</p>;
	const { ask, answer } = shown;
	const busy = !current;
	if (!answer) return <Unplanned words={words.failed} busy={busy} />;
	const { planned, calibration, dots } = answer;
	if (!planned.ok) {
		return (
			<Unplanned words={unplannableWords(planned.error, unit)} busy={busy}>
				{planned.error.code === "full" && (
					<OtherWays key={JSON.stringify(ask)} carId={carId} ask={ask} unit={unit} shown="once" />
				)}
			</Unplanned>
		);
	}
	const { plan, verdict } = planned.value;
	const inside = verdict === "inside";
	return (
		<>
			<Answer answer={answer} planned={planned.value} unit={unit} busy={busy} onLook={onLook} />
			<section class="stack" aria-label={words.leadsTo} aria-busy={busy}>
				{dots && <DotPlot dots={dots} window={calibration.window} calibratedFor={calibration.calibratedFor} compact />}
				<Because plan={plan} currency={currency} />
				<button type="button" class="button main" aria-disabled={!current} onClick={() => current && onPump(ask, plan)}>
					{current ? (inside ? words.pump : words.pumpAllTheSame) : words.reckoning}
				</button>
				{!inside && (
					<OtherWays
						key={JSON.stringify(ask)}
						carId={carId}
						ask={ask}
						unit={unit}
						shown={verdict === "lean" ? "once" : "asking"}
					/>
				)}
				<Settling ask={ask} inside={plan.chances.inside} />
				<p class="small soft">{words.target(calibration.name, exactPercentRange(...calibration.window))}</p>
			</section>
		</>
	);
}

interface UnplannedProps {
	readonly words: string;
	readonly busy: boolean;
	readonly children?: ComponentChildren;
}

function Unplanned({ words, busy, children }: UnplannedProps) {
	const { title } = planScreenWords();
	return (
		<section class="plan stack" aria-label={title} aria-busy={busy}>
			<Heading words={title} busy={busy} />
			<p class="fault" role="status">
				{words}
			</p>
			{children}
		</section>
	);
}

/** Of an answer; while a newer question is reckoned it says so, for grey alone is hardly seen in the sun. */
function Heading({ words, busy }: { readonly words: string; readonly busy: boolean }) {
	return <h2>{busy ? planScreenWords().busy(words) : words}</h2>;
}

const MeasureAdvice = later(async () => (await import("../components/MeasureAdvice")).MeasureAdvice);

interface SettlingProps {
	readonly ask: PlanAsk;
	/** Chance of ending inside the window with the plan as it is. */
	readonly inside: number;
}

/** What to measure before or after pumping it; reckoned once it is opened. */
function Settling({ ask, inside }: SettlingProps) {
	const [open, setOpen] = useState(false);
	// What is said of another question would mislead: it begins anew.
	const question = JSON.stringify({ ...ask, visit: { ...ask.visit, at: null } });
	return (
		<details class="card" onToggle={(event) => setOpen(event.currentTarget.open)}>
			<summary>{planScreenWords().settle}</summary>
			{open && <MeasureAdvice key={question} ask={ask} inside={inside} />}
		</details>
	);
}

/** Characters of an answer that in large type leave room for the form. */
const mostLarge = 90;

interface AnswerProps {
	readonly answer: PlanAnswer;
	readonly planned: Planned;
	readonly unit: VolumeUnit;
	/** A newer question is being reckoned. */
	readonly busy: boolean;
	readonly onLook: (() => void) | null;
}

/** In large type, on the screen while the form below it is changed. */
function Answer({ answer, planned, unit, busy, onLook }: AnswerProps) {
	const { pours, chances } = planned.plan;
	const short = verdictLine(answer);
	const words = planScreenWords();
	const lines = pours.map((pour, i) =>
		i === 0 ? pourWords(pour, unit) : poursWords().thenPour(pourWords(pour, unit)),
	);
	const long = lines.join("").length > mostLarge;
	return (
		<>
			{short && (
				<section class="card" aria-label={words.noPlan} aria-busy={busy}>
					<h2>{short.title}</h2>
					<p>{short.more}</p>
					{onLook && !short.outOfReach && (
						<>
							<p>{words.nobodyLooked}</p>
							<button type="button" class="button wide" onClick={onLook}>
								{words.noteGauge}
							</button>
						</>
					)}
				</section>
			)}
			<section class="plan sticky stack" aria-label={words.title} aria-busy={busy} aria-live="polite">
				<Heading words={short ? words.nearest : words.title} busy={busy} />
				<ol class={long ? "pours long" : "pours"}>
					{lines.map((line) => (
						<li key={line}>{line}</li>
					))}
				</ol>
				<p>
					<strong>{words.inside(inTwenty(chances.inside))}</strong>{" "}
					{words.outside(inTwenty(chances.above), inTwenty(chances.below))}
				</p>
			</section>
		</>
	);
}

function Because({ plan, currency }: { readonly plan: Plan; readonly currency: string | undefined }) {
	const { content, cost } = plan;
	const order = orderWords(plan);
	const words = planScreenWords();
	return (
		<>
			<p>
				{words.contentThen(percent(content.median))}{" "}
				<span class="nowrap">{percentRange(content.low, content.high)}</span>.
				{cost !== null && ` ${words.costs(money(cost, currency))}`}
			</p>
			{order !== null && <p>{order}</p>}
		</>
	);
}
