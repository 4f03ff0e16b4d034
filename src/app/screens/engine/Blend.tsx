import { useId, useMemo, useState } from "preact/hooks";
import type { Estimate } from "../../../domain/estimator/estimate";
import type { Calibration, Car } from "../../../domain/vehicle";
import { emphasised } from "../../emphasis";
import { exactPercent, percent, percentRange } from "../../format";
import { typedNumber } from "../../typedNumber";
import { engineWords } from "../../words/engine";
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
	const words = engineWords();
	const notes = {
		lambda: commandedLambda ? words.commands(typedNumber(commandedLambda)) : words.commandsOne,
		trim: trimAuthority ? words.trimsReach(exactPercent(trimAuthority)) : "",
	};
	return (
		<div class="blend">
			<section class="card" aria-label={words.title}>
				<h2>{words.title}</h2>
				<p>{tank ? words.tank(percent(tank.median), percentRange(tank.low, tank.high)) : words.tankUnknown}</p>
				<p>
					{calibration ? words.madeFor(calibration.name, exactPercent(calibration.calibratedFor)) : words.noCalibration}
				</p>
				<p class="small soft">{words.curves(tank !== null)}</p>
				<button type="button" class="button wide" onClick={onFuelSystem}>
					{words.toFuelSystem}
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

interface ChosenProps {
	readonly chosen: number;
	readonly onChange: (content: number) => void;
}

/** Stays in sight, within a thumb's reach, while the properties scroll by. */
function ChosenContent({ chosen, onChange }: ChosenProps) {
	const id = useId();
	const [before, content, after] = emphasised(engineWords().compare(percent(chosen)));
	return (
		<div class="card chosen">
			<label for={id}>
				{before}
				<output class="number">{content}</output>
				{after}
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
