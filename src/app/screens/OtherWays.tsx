import { useState } from "preact/hooks";
import type { VolumeUnit } from "../../domain/units";
import type { Otherwise, PlanAsk } from "../../keeper/view";
import { inTwenty } from "../format";
import { burnWords, driveWords, poursInTurn } from "../planWords";
import { usePlan } from "../usePlan";
import { planScreenWords } from "../words/plan";

interface OtherWaysProps {
	readonly carId: string;
	readonly ask: PlanAsk;
	readonly unit: VolumeUnit;
	/** `once`: shown at once, it matters. `asking`: only where the driver wants to know, for it takes a while. */
	readonly shown: "once" | "asking";
}

/** Asked behind the plan itself: it takes so long that another change of the form should not have to wait for it. */
const behindMs = 500;

/** Where no plan for this stop comes inside: driving some off first, or several stops. */
export function OtherWays({ carId, ask, unit, shown }: OtherWaysProps) {
	const [wanted, setWanted] = useState(shown === "once");
	const { shown: ways, current } = usePlan(carId, wanted ? { ...ask, otherwise: true } : null, 0, behindMs);
	return (
		<details class="card" open={shown === "once"} onToggle={(event) => event.currentTarget.open && setWanted(true)}>
			<summary>{planScreenWords().otherWays}</summary>
			{ways && current ? (
				<Ways otherwise={ways.answer?.otherwise ?? null} unit={unit} looked={ask.visit.gauge !== undefined} />
			) : (
				<p class="soft">{planScreenWords().reckoning}</p>
			)}
		</details>
	);
}

interface WaysProps {
	readonly otherwise: Otherwise | null;
	readonly unit: VolumeUnit;
	/** Whether the gauge was noted. */
	readonly looked: boolean;
}

function Ways({ otherwise, unit, looked }: WaysProps) {
	const words = planScreenWords();
	if (!otherwise) return <p>{words.finishFirst}</p>;
	const { burnFirst, burnKm, stages, drive } = otherwise;
	const reached = stages.length > 1 && stages[stages.length - 1].planned.verdict === "inside";
	return (
		<>
			<p>{looked || burnFirst !== null ? burnWords(burnFirst, burnKm, unit) : words.afterGauge}</p>
			<p>{driveWords(drive, stages.length, reached)}</p>
			{stages.length > 1 && (
				<ol class="stages">
					{stages.map(({ visit, planned }) => (
						<li key={visit.stop}>
							{words.stage(
								poursInTurn(planned.plan.pours, unit),
								inTwenty(planned.plan.chances.inside),
								inTwenty(planned.plan.chances.above),
							)}
						</li>
					))}
				</ol>
			)}
			<p>{words.lookHelps}</p>
		</>
	);
}
