import { useEffect, useMemo, useRef } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import type { Plan } from "../../domain/plan/request";
import type { Car } from "../../domain/vehicle";
import type { PlanAsk } from "../../keeper/view";
import { isoWithOffset, useAppState } from "../app";
import { flashedNow } from "../calibrations";
import { GaugeField, gaugeWords } from "../components/GaugeField";
import { OdometerField } from "../components/OdometerField";
import { OffersField } from "../components/OffersField";
import { PlacePicker } from "../components/PlacePicker";
import { PlanDetails } from "../components/PlanDetails";
import { PlanFullness } from "../components/PlanFullness";
import { lastOdometer, placesIn, usualProduct } from "../fillChoices";
import { type FillDraft, fillsOf, inUnit, newDraft, readDraft, readFreshDraft } from "../fillDraft";
import { losesTyped, withPlan } from "../fillPlan";
import { exactVolume } from "../format";
import { unitOf } from "../model";
import { useMoment } from "../moment";
import { atPlace, forStop, newPlanForm, type PlanForm, planAskOf, readPlanForm } from "../planForm";
import { productName } from "../text";
import { useDraft } from "../useDraft";
import { usePlan } from "../usePlan";
import { planScreenWords } from "../words/plan";
import { poursWords } from "../words/pours";
import { PlanCard } from "./PlanCard";
import "./Plan.css";

/** "How much of each?" */
export function PlanScreen() {
	const { state } = useAppState();
	const { car, events } = state;
	const words = planScreenWords();
	if (!car || !events) return <p class="soft">{words.openingLog}</p>;
	if (car.calibrations.length === 0) {
		return (
			<section class="card">
				<h2>{words.title}</h2>
				<p>{words.needsCalibration}</p>
				<a class="button main" href="#/calibration">
					{words.enterCalibration}
				</a>
			</section>
		);
	}
	return <Planning key={car.id} car={car} events={events} />;
}

interface PlanningProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
}

function Planning({ car, events }: PlanningProps) {
	const { state, model, toasts, now } = useAppState();
	const unit = unitOf(state);
	const places = useMemo(() => placesIn(events), [events]);
	// The stop is that of the fill form: what is noted here is noted there, and the other way round.
	const key = `${car.id}/fill`;
	const stop = useDraft<FillDraft>(
		key,
		(raw) => readFreshDraft(raw, now()),
		() => newDraft(model.newId, usualProduct(events), places[0] ?? null, unit),
	);
	const asked = useDraft<PlanForm | null>(`${car.id}/plan`, readPlanForm, () => null);
	const draft = stop.draft && inUnit(stop.draft, unit);
	const form = useMemo(() => {
		if (!draft || asked.draft === undefined) return null;
		return asked.draft ? forStop(asked.draft, model.newId, events, draft) : newPlanForm(model.newId, events, draft);
	}, [asked.draft, draft?.stop, draft?.place, unit]);
	const opened = useMoment(events);
	const gauge = useRef<HTMLDetailsElement>(null);
	const poured = draft ? fillsOf(draft, car.tank, unit, opened) : [];
	const read = draft && form && planAskOf(form, draft, poured, car.tank, isoWithOffset(opened));
	const plan = usePlan(car.id, read?.ok ? read.value : null, events.length);
	// Kept from the start: opened again, it is the same stop, and the same plan.
	useEffect(() => {
		if (draft && form && asked.draft?.stop !== form.stop) {
			stop.change(draft);
			asked.change(form);
		}
	}, [draft?.stop, form?.stop]);
	const words = planScreenWords();
	if (!draft || !form || !read) return <p class="soft">{words.opening}</p>;

	const faults = read.ok ? {} : read.error;
	const odometer = lastOdometer(events, opened, draft.instead);
	function look(): void {
		if (!gauge.current) return;
		gauge.current.open = true;
		gauge.current.scrollIntoView?.({ block: "end" });
		// Scrolls on where the answer, or a message, would cover it.
		gauge.current.querySelector<HTMLElement>("input")?.focus();
	}
	async function pump(ask: PlanAsk, made: Plan): Promise<void> {
		if (!draft) return;
		await stop.change(withPlan(draft, ask, made, now()));
		location.hash = "#/fill";
		if (losesTyped(draft, ask.poured)) {
			toasts.show(words.tookPlace, { label: words.undo, run: () => unpump(draft) });
		}
	}
	/** Back here with the form as it was, unless its stop is saved by now. */
	async function unpump(before: FillDraft): Promise<void> {
		if (readDraft(await model.draft(key))?.stop !== before.stop) return;
		await model.saveDraft(key, before);
		location.hash = "#/plan";
	}

	return (
		<>
			{poured.length > 0 && (
				<section class="card" aria-label={words.pouredAlready}>
					<p>
						{words.inTank(
							poured.map(({ litres, product }) => poursWords().of(exactVolume(litres, unit), productName(product))),
						)}
					</p>
					<a class="button wide" href="#/fill">
						{words.changeInForm}
					</a>
				</section>
			)}
			<PlanCard
				carId={car.id}
				plan={plan}
				faults={faults}
				unit={unit}
				currency={car.currency}
				onLook={draft.gauge === null ? look : null}
				onPump={pump}
			/>
			<div class="asked">
				<OffersField form={form} events={events} onChange={asked.change} />
				<details class="card" ref={gauge}>
					<summary>{words.noted(draft.gauge === null ? null : gaugeWords(draft.gauge), draft.odometer)}</summary>
					<GaugeField
						label={poured.length > 0 ? words.gaugeBefore : words.gauge}
						hint={words.gaugeHint}
						value={draft.gauge}
						onChange={(looked) => stop.change({ ...draft, gauge: looked, notedAt: now() })}
					/>
					<OdometerField
						typed={draft.odometer}
						last={odometer}
						unit={unit}
						onInput={(typed) => stop.change({ ...draft, odometer: typed, notedAt: now() })}
					/>
				</details>
				<details class="card">
					<summary>{draft.place ?? words.noPlace}</summary>
					<PlacePicker
						places={places}
						chosen={draft.place}
						onChoose={(place) => {
							stop.change({ ...draft, place });
							asked.change(atPlace(form, place, events));
						}}
					/>
				</details>
				<PlanFullness form={form} unit={unit} faults={faults} currency={car.currency} onChange={asked.change} />
				<PlanDetails
					form={form}
					unit={unit}
					faults={faults}
					calibrations={car.calibrations}
					flashed={flashedNow(car, events)}
					currency={car.currency}
					onChange={asked.change}
				/>
			</div>
		</>
	);
}
