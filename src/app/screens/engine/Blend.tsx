import { useId, useMemo, useState } from "preact/hooks";
import type { Estimate } from "../../../domain/estimator/estimate";
import type { Calibration, Car } from "../../../domain/vehicle";
import { exactPercent, percent, percentRange } from "../../format";
import { propertyGroups } from "./blendProperty";
import { PropertyList } from "./PropertyList";
import "../../components/slider.css";
import "./engine.css";

interface BlendProps {
	readonly car: Car;
	readonly tank: Estimate | null;
	readonly calibration: Calibration | null;
	readonly onFuelSystem: () => void;
}

/** What flex fuel is called after. */
const usualChosen = 0.85;

/** What the blend does: of the tank, of the calibration, and of a content to play with. */
export function Blend({ car, tank, calibration, onFuelSystem }: BlendProps) {
	const [chosen, setChosen] = useState(usualChosen);
	const calibratedFor = calibration?.calibratedFor ?? null;
	const { commandedLambda, trimAuthority } = car.fuelSystem ?? {};
	const groups = useMemo(() => propertyGroups(calibratedFor, commandedLambda ?? 1), [calibratedFor, commandedLambda]);
	const notes = {
		lambda: commandedLambda
			? `At full load it commands ${commandedLambda}, the fuel-system card says.`
			: "Here for a calibration that commands 1; the fuel-system card takes what it commands at full load.",
		trim: trimAuthority ? `The fuel-system card gives them ${exactPercent(trimAuthority)}.` : "",
	};
	return (
		<div class="blend">
			<section class="card" aria-label="What the blend does to the engine">
				<h2>What the blend does to the engine</h2>
				<p>{tankWords(tank)}</p>
				<p>
					{calibration
						? `“${calibration.name}” is made for ${exactPercent(calibration.calibratedFor)}.`
						: "No calibration is entered, so nothing can be held against one."}
				</p>
				<p class="small soft">
					Every curve runs from no ethanol to pure ethanol.{" "}
					{tank ? "The upright band is the tank’s range, nine times in ten. " : ""}
					Shaded along a curve: other gasolines than the usual one that the numbers are for.
				</p>
				<button type="button" class="button wide" onClick={onFuelSystem}>
					To the fuel system and its limits
				</button>
			</section>
			{groups.map((group, i) => (
				<PropertyList
					key={group.id}
					group={group}
					first={i === 0}
					notes={notes}
					tank={tank}
					calibratedFor={calibratedFor}
					chosen={chosen}
				/>
			))}
			<ChosenContent chosen={chosen} onChange={setChosen} />
		</div>
	);
}

function tankWords(tank: Estimate | null): string {
	return tank
		? `The tank holds about ${percent(tank.median)} ethanol, nine times in ten ${percentRange(tank.low, tank.high)}.`
		: "Nothing is known of this tank yet.";
}

interface ChosenProps {
	readonly chosen: number;
	readonly onChange: (content: number) => void;
}

/** Stays in sight, within a thumb's reach, while the properties scroll by. */
function ChosenContent({ chosen, onChange }: ChosenProps) {
	const id = useId();
	return (
		<div class="card chosen">
			<label for={id}>
				Compare with <output class="number">{percent(chosen)}</output> ethanol
			</label>
			<input
				id={id}
				type="range"
				class="slider"
				min={0}
				max={100}
				step={1}
				value={Math.round(chosen * 100)}
				aria-valuetext={percent(chosen)}
				onInput={(event) => onChange(event.currentTarget.valueAsNumber / 100)}
			/>
		</div>
	);
}
