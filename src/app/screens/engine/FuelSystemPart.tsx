import { useRef } from "preact/hooks";
import type { Estimate } from "../../../domain/estimator/estimate";
import type { Calibration, Car } from "../../../domain/vehicle";
import { useApp } from "../../app";
import {
	type FuelSystemForm,
	fuelSystemFormOf,
	readFuelSystem,
	readFuelSystemDraft,
	storedFuelSystem,
} from "../../fuelSystemForm";
import { type ChosenUnits, readUnits, unitsKey } from "../../fuelSystemUnits";
import { useAnswer } from "../../useAnswer";
import { useDraft } from "../../useDraft";
import { fuelSystemWords } from "../../words/fuelSystem";
import { FuelSystemFields } from "./FuelSystemFields";
import { Limits } from "./Limits";
import "./fuelSystem.css";

interface FuelSystemPartProps {
	readonly car: Car;
	readonly tank: Estimate | null;
	readonly calibration: Calibration | null;
}

/** The fuel-system card, and the limits that follow from it while it is typed. */
export function FuelSystemPart(props: FuelSystemPartProps) {
	const { model } = useApp();
	const { answer: units } = useAnswer("units", async () =>
		readUnits(await model.preference(unitsKey), globalThis.navigator?.language),
	);
	return units ? <Typed {...props} units={units} /> : <p class="soft late">{fuelSystemWords().openingForm}</p>;
}

function Typed({ car, tank, calibration, units }: FuelSystemPartProps & { readonly units: ChosenUnits }) {
	const { model, toasts } = useApp();
	const words = fuelSystemWords();
	const stored = car.fuelSystem ?? {};
	const key = `${car.id}/fuelSystem`;
	const { draft, change } = useDraft<FuelSystemForm>(
		key,
		(raw) => readFuelSystemDraft(raw, units),
		() => fuelSystemFormOf(stored, units),
	);
	// The fields stay live while the card is being saved.
	const latest = useRef<FuelSystemForm | null>(null);
	if (!draft) return <p class="soft late">{fuelSystemWords().openingForm}</p>;
	const read = readFuelSystem(draft, stored);

	async function save(form: FuelSystemForm): Promise<boolean> {
		if (!read.ok) return false;
		latest.current = form;
		const { fuelSystem: _, ...rest } = model.state().car ?? car;
		const fuelSystem = storedFuelSystem(read.value, stored);
		const done = await model.saveCar(fuelSystem ? { ...rest, fuelSystem } : rest);
		if (done) {
			await model.savePreference(unitsKey, form.units);
			if (latest.current === form) await model.dropDraft(key);
			toasts.show(fuelSystemWords().saved);
		}
		return done === true;
	}

	return (
		<>
			<FuelSystemFields
				form={draft}
				stored={stored}
				faults={read.ok ? {} : read.error}
				onChange={(next) => {
					latest.current = next;
					change(next);
				}}
				onSave={() => save(draft)}
			/>
			{read.ok ? (
				<Limits car={car} system={read.value} tank={tank} calibration={calibration} />
			) : (
				<section class="card" aria-label={words.limits}>
					<h2>{words.limits}</h2>
					<p>{words.unusable}</p>
				</section>
			)}
		</>
	);
}
