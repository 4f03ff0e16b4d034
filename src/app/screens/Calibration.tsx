import { useState } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import { fraction } from "../../domain/quantity";
import type { Calibration, Car } from "../../domain/vehicle";
import { useApp, useAppState } from "../app";
import {
	type CalibrationDraft,
	calibrationDraftKey,
	emptyCalibrationDraft,
	readCalibrationDraft,
} from "../calibrationDraft";
import { readCalibration } from "../calibrationForm";
import { flashEvent, flashedNow, isFact } from "../calibrations";
import { BudgetChoices } from "../components/BudgetChoices";
import { CalibrationFields } from "../components/CalibrationFields";
import { Check } from "../components/Check";
import { Form } from "../components/Form";
import { useDraft } from "../useDraft";
import { calibrationWords } from "../words/calibration";

/** A new calibration, or another version of one. */
export function CalibrationScreen({ id }: { readonly id: string | null }) {
	const { car, account } = useAppState().state;
	if (!car || !account) return <p class="soft late">{calibrationWords().reading}</p>;
	return <Opened car={car} events={account.events} id={id} />;
}

interface OpenedProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	readonly id: string | null;
}

/** Stays with what it was opened with: saving changes the car under it. */
function Opened({ id, ...opened }: OpenedProps) {
	const [{ car, events }] = useState(opened);
	const old = car.calibrations.find((calibration) => calibration.id === id) ?? null;
	const words = calibrationWords();
	if (id !== null && !old) {
		return (
			<section class="card">
				<h2>{words.none}</h2>
				<p>{words.noneMore}</p>
				<a class="button wide" href="#/car">
					{words.toList}
				</a>
			</section>
		);
	}
	return <CalibrationForCar car={car} events={events} old={old} />;
}

interface CalibrationForCarProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	readonly old: Calibration | null;
}

function CalibrationForCar({ car, events, old }: CalibrationForCarProps) {
	const { model, toasts, now } = useApp();
	const first = car.calibrations.length === 0;
	const key = calibrationDraftKey(car.id);
	const empty = () => emptyCalibrationDraft(model.newId(), old, first);
	const { draft, change, leave } = useDraft<CalibrationDraft>(key, (raw) => readCalibrationDraft(raw, old), empty);
	const [refused, setRefused] = useState(false);
	const [busy, setBusy] = useState(false);
	const words = calibrationWords();
	if (!draft) return <p class="soft late">{words.opening}</p>;

	const { form } = draft;
	const read = readCalibration(form);
	const faults = refused && !read.ok ? read.error : {};
	const inForce = old !== null && flashedNow(car, events)?.id === old.id;
	const fact = old !== null && isFact(old.id, car, events);

	function save(): Promise<boolean> | null {
		setRefused(!read.ok);
		return draft && read.ok ? saved(draft, read.value) : null;
	}
	async function saved(draft: CalibrationDraft, fields: Omit<Calibration, "id">): Promise<boolean> {
		const calibration = calibrationOf(draft, fields, old);
		leave(true);
		setBusy(true);
		const done = await write(calibration);
		leave(done);
		setBusy(false);
		if (done) {
			toasts.show(words.saved(calibration.name));
			location.hash = "#/car";
		}
		return done;
	}
	async function write(calibration: Calibration): Promise<boolean> {
		// Each version has an id of its own: two copies of a log can always be joined.
		const current = model.state().car ?? car;
		const others = current.calibrations.filter(({ id }) => id !== calibration.id);
		const calibrations =
			old && !fact ? others.map((other) => (other.id === old.id ? calibration : other)) : [...others, calibration];
		if (!(await model.saveCar({ ...current, calibrations }))) return false;
		if (inForce || (!old && (first || draft?.flashed))) {
			return model.append([flashEvent(model.newId(), calibration.id, events, now())], key);
		}
		await model.dropDraft(key);
		return true;
	}

	async function discard(): Promise<void> {
		leave(true);
		await model.dropDraft(key);
		location.hash = "#/car";
	}

	return (
		<Form label={old ? words.change(old.name) : words.new} once onSave={save}>
			<section class="card">
				<h2>{old ? words.change(old.name) : words.new}</h2>
				{fact && <p>{inForce ? words.factInForce : words.fact}</p>}
				{draft.proposedTo === form.to && (
					<p role="note">
						<strong>{words.proposed(`${form.to}\u00a0%`)}</strong> {words.proposedMore}
					</p>
				)}
				<CalibrationFields form={form} faults={faults} onChange={(form) => change({ ...draft, form })} />
			</section>
			<BudgetChoices lean={draft.lean} knock={draft.knock} onChange={(changed) => change({ ...draft, ...changed })} />
			{!old && (
				<section class="card">
					{first ? (
						<p>{words.first}</p>
					) : (
						<Check
							label={words.flashed}
							more={words.flashedMore}
							checked={draft.flashed}
							onChange={(flashed) => change({ ...draft, flashed })}
						/>
					)}
				</section>
			)}
			{refused && !read.ok && (
				<p class="fault" role="alert">
					{words.mend}
				</p>
			)}
			<button type="submit" class="button main">
				{busy ? words.busy : words.save}
			</button>
			<button type="button" class="button wide" disabled={busy} onClick={discard}>
				{old ? words.leave : words.leaveNew}
			</button>
		</Form>
	);
}

/** What the fields say, with whatever else a newer version of the app may have put into the old one. */
function calibrationOf(draft: CalibrationDraft, fields: Omit<Calibration, "id">, old: Calibration | null): Calibration {
	return {
		...old,
		...fields,
		id: draft.id,
		leanBudget: fraction(Number(draft.lean)),
		knockBudget: fraction(Number(draft.knock)),
	};
}
