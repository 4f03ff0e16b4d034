import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Plan, Planned } from "../../domain/plan/request";
import type { VolumeUnit } from "../../domain/units";
import type { PlanAnswer, PlanAsk } from "../../keeper/view";
import { DotPlot } from "../components/DotPlot";
import { inTwenty, percent, percentRange } from "../format";
import { later } from "../later";
import { money } from "../money";
import type { PlanFaults } from "../planForm";
import { orderWords, pourWords, targetWords, unplannableWords, verdictLine } from "../planWords";
import type { PlanSource } from "../usePlan";
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
	const missing =
		faults.amount ?? faults.money ?? (Object.keys(faults).length > 0 ? "Mend what is marked below." : null);
	if (missing !== null) return <Unplanned words={missing} busy={false} />;
	if (!shown) return <p class="soft">Reckoning…</p>;
	const { ask, answer } = shown;
	const busy = !current;
	if (!answer) {
		return <Unplanned words="The plan could not be reckoned. Change something, or reload the app." busy={busy} />;
	}
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
			<section class="stack" aria-label="What it leads to" aria-busy={busy}>
				{dots && <DotPlot dots={dots} window={calibration.window} calibratedFor={calibration.calibratedFor} compact />}
				<Because plan={plan} currency={currency} />
				<button type="button" class="button main" aria-disabled={!current} onClick={() => current && onPump(ask, plan)}>
					{current ? (inside ? "Pump this" : "Pump this all the same") : "Reckoning…"}
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
				<p class="small soft">{targetWords(calibration)}.</p>
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
	return (
		<section class="plan stack" aria-label="What to pump" aria-busy={busy}>
			<Heading words="What to pump" busy={busy} />
			<p class="fault" role="status">
				{words}
			</p>
			{children}
		</section>
	);
}

/** Of an answer; while a newer question is reckoned it says so, for grey alone is hardly seen in the sun. */
function Heading({ words, busy }: { readonly words: string; readonly busy: boolean }) {
	return (
		<h2>
			{words}
			{busy && ": reckoning…"}
		</h2>
	);
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
			<summary>What would settle it?</summary>
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
	const lines = pours.map((pour, i) => `${i === 0 ? "" : "then "}${pourWords(pour, unit)}`);
	const long = lines.join("").length > mostLarge;
	return (
		<>
			{short && (
				<section class="card" aria-label="No plan does it" aria-busy={busy}>
					<h2>{short.title}</h2>
					<p>{short.more}</p>
					{onLook && !short.outOfReach && (
						<>
							<p>Nobody has looked at the gauge yet, and what is left in the tank counts most.</p>
							<button type="button" class="button wide" onClick={onLook}>
								Note the gauge
							</button>
						</>
					)}
				</section>
			)}
			<section class="plan sticky stack" aria-label="What to pump" aria-busy={busy} aria-live="polite">
				<Heading words={short ? "The nearest" : "What to pump"} busy={busy} />
				<ol class={long ? "pours long" : "pours"}>
					{lines.map((line) => (
						<li key={line}>{line}</li>
					))}
				</ol>
				<p>
					<strong>Inside: {inTwenty(chances.inside)}.</strong> Too much: {inTwenty(chances.above)}, too little:{" "}
					{inTwenty(chances.below)}.
				</p>
			</section>
		</>
	);
}

function Because({ plan, currency }: { readonly plan: Plan; readonly currency: string | undefined }) {
	const { content, cost } = plan;
	const order = orderWords(plan);
	return (
		<>
			<p>
				About {percent(content.median)} then, 9 in 10:{" "}
				<span class="nowrap">{percentRange(content.low, content.high)}</span>.
				{cost !== null && ` It costs about ${money(cost, currency)}.`}
			</p>
			{order !== null && <p>{order}</p>}
		</>
	);
}
