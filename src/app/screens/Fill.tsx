import { useMemo, useRef, useState } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import { toLitres } from "../../domain/units";
import type { Car } from "../../domain/vehicle";
import { useAppState } from "../app";
import { AmountBar } from "../components/AmountBar";
import { GaugeField, gaugeWords } from "../components/GaugeField";
import { Keypad } from "../components/Keypad";
import { PlacePicker } from "../components/PlacePicker";
import { ProductPicker } from "../components/ProductPicker";
import { WhenField } from "../components/WhenField";
import { placesIn, productAfter, productsIn, usualProduct } from "../fillChoices";
import {
	type DraftPour,
	draftOf,
	type FillDraft,
	faultOf,
	fillsOf,
	inUnit,
	mostLitres,
	newDraft,
	readDraft,
	stopOf,
} from "../fillDraft";
import { dateTime, exactVolume, volume } from "../format";
import { fillsOfStop, unitOf } from "../model";
import { productName } from "../text";
import { useDraft } from "../useDraft";
import { usePreviewSource } from "../usePreview";
import { useSaveStop } from "../useSaveStop";
import { LeanQuestion } from "./LeanQuestion";
import { PreviewCard } from "./PreviewCard";
import "./Fill.css";

interface FillScreenProps {
	/** An event whose stop is to be replaced; null for a new stop. */
	readonly correcting: string | null;
}

/** Tap in what is pumped. */
export function FillScreen({ correcting }: FillScreenProps) {
	const { state } = useAppState();
	const { car, events } = state;
	if (!car || !events) return <p class="soft">Opening the log…</p>;
	const target = events.find(({ id }) => id === correcting);
	if (correcting !== null && target?.kind !== "fill") {
		return (
			<p class="fault">
				This stop is not in the log. <a href="#/log">Back to the log</a>
			</p>
		);
	}
	const stop = target?.kind === "fill" ? target.stop : null;
	return <FillForm key={`${car.id} ${stop}`} car={car} events={events} correctedStop={stop} />;
}

interface FillFormProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	readonly correctedStop: string | null;
}

function FillForm({ car, events, correctedStop }: FillFormProps) {
	const { state, model, toasts, now } = useAppState();
	const unit = unitOf(state);
	const key = correctedStop === null ? `${car.id}/fill` : `${car.id}/correct/${correctedStop}`;
	const places = useMemo(() => placesIn(events), [events]);
	const products = useMemo(() => productsIn(events), [events]);
	const {
		draft: stored,
		change,
		leave,
		reset,
	} = useDraft<FillDraft>(key, readDraft, () =>
		correctedStop === null
			? newDraft(model.newId, usualProduct(events), places[0] ?? null, unit)
			: draftOf(fillsOfStop(events, correctedStop), unit, model.newId),
	);
	const draft = stored && inUnit(stored, unit);
	// The minute the form was opened serves all questions; the event gets the time of saving.
	const [opened] = useState(now());
	const preview = usePreviewSource(car.id, draft ? stopOf(draft, car.tank, unit, opened) : null);
	const then = correctedStop === null ? "#/tank" : "#/log";
	const { saving, asking, save, dismiss } = useSaveStop({ car, unit, draftKey: key, change, leave, then });
	const [fault, setFault] = useState<string | null>(null);
	const picker = useRef<HTMLDivElement>(null);
	if (!draft) return <p class="soft">Opening the form…</p>;

	const open = draft.pours[draft.pours.length - 1];
	const settled = draft.pours.slice(0, -1);
	const most = mostLitres(car.tank);
	const openFault = faultOf(open, car.tank, unit);
	const amount = openFault === null ? toLitres(Number(open.typed.replace(",", ".")), unit) : 0;
	const ready = fillsOf(draft, car.tank, unit, opened);

	function changeOpen(part: Partial<DraftPour>): void {
		setFault(null);
		if (draft) change({ ...draft, pours: [...settled, { ...open, ...part }] });
	}
	function addProduct(): void {
		if (!draft) return;
		if (openFault !== null) {
			setFault(amountFault(openFault, most, unit));
			return;
		}
		const product = productAfter(events, open.product);
		const pours = [...settled, open, { id: model.newId(), product, typed: "", toClick: false }];
		change({ ...draft, pours });
		picker.current?.scrollIntoView?.({ block: "start" });
	}
	function takeOut(pour: DraftPour): void {
		if (!draft) return;
		const before = draft;
		change({ ...draft, pours: draft.pours.filter(({ id }) => id !== pour.id) });
		toasts.show(`${productName(pour.product)} is out of this stop.`, { label: "Undo", run: () => change(before) });
	}
	function startOver(): void {
		if (!draft) return;
		const before = draft;
		reset();
		toasts.show("The form is empty.", { label: "Undo", run: () => change(before) });
	}
	function trySave(agreed: boolean): void {
		if (!draft) return;
		const unusable = settled.find((pour) => faultOf(pour, car.tank, unit) !== null);
		if (unusable) {
			setFault(`“${productName(unusable.product)}” above has an amount that can’t be saved: take it out or mend it.`);
		} else if (openFault !== null && !(openFault === "empty" && settled.length > 0)) {
			setFault(amountFault(openFault, most, unit));
		} else {
			save(draft, agreed);
		}
	}

	return (
		<>
			{draft.instead.length > 0 && (
				<p class="card">
					You are correcting the stop of {dateTime(draft.at ?? "")}. The old entries stay in the log as void.
				</p>
			)}
			<details class="card">
				<summary>
					{draft.place ?? "Place not named"}
					{draft.at === null ? "" : `, ${dateTime(draft.at)}`}
				</summary>
				<div class="stack">
					<PlacePicker places={places} chosen={draft.place} onChoose={(place) => change({ ...draft, place })} />
					<WhenField value={draft.at} now={now()} onChange={(at) => change({ ...draft, at })} />
				</div>
			</details>
			<details class="card">
				<summary>
					{draft.gauge === null
						? "Gauge before filling: not looked"
						: `Gauge before filling: ${gaugeWords(draft.gauge)}`}
				</summary>
				<GaugeField
					label="Fuel gauge before filling"
					hint="What was left decides how far this fill moves the blend: a look narrows the dots."
					value={draft.gauge}
					onChange={(gauge) => change({ ...draft, gauge })}
				/>
			</details>
			{settled.map((pour, i) => (
				<div class="card row between" key={pour.id}>
					<p>
						{i + 1}. {exactVolume(toLitres(Number(pour.typed.replace(",", ".")) || 0, unit), unit)} of “
						{productName(pour.product)}”
					</p>
					<button type="button" class="button" onClick={() => takeOut(pour)}>
						Take out
					</button>
				</div>
			))}
			<div ref={picker} class="picker">
				<ProductPicker recent={products} chosen={open.product} onChoose={(product) => changeOpen({ product })} />
			</div>
			<PreviewCard source={preview} unit={unit} />
			<div class="card">
				<div class="amount">
					<label for="amount">
						{settled.length > 0 ? `Amount ${settled.length + 1}` : "Amount"}, {unit}
					</label>
					<input
						id="amount"
						class="number"
						inputMode="none"
						autocomplete="off"
						placeholder="0"
						value={open.typed}
						aria-invalid={fault !== null}
						aria-describedby={fault === null ? undefined : "amount-fault"}
						onInput={(event) => changeOpen({ typed: event.currentTarget.value })}
					/>
				</div>
				{fault === null && openFault === "tooLarge" && <p class="fault">{amountFault("tooLarge", most, unit)}</p>}
				<AmountBar
					source={preview}
					amount={amount}
					most={most}
					unit={unit}
					onSlide={(typed) => changeOpen({ typed })}
				/>
				<Keypad value={open.typed} label="the amount" onChange={(typed) => changeOpen({ typed })} />
				<button
					type="button"
					class="button wide"
					aria-pressed={open.toClick}
					onClick={() => changeOpen({ toClick: !open.toClick })}
				>
					{open.toClick ? "✓ Filled to the first click" : "Filled to the first click?"}
				</button>
				<button type="button" class="button wide" onClick={addProduct}>
					A second product at this stop
				</button>
			</div>
			{fault !== null && (
				<p class="fault" id="amount-fault" role="alert">
					{fault}
				</p>
			)}
			<button type="button" class="button main" aria-disabled={saving} onClick={() => trySave(false)}>
				{saving
					? "Saving…"
					: saveWords(
							ready.map(({ litres }) => litres),
							unit,
						)}
			</button>
			{correctedStop !== null && (
				<button
					type="button"
					class="button wide"
					onClick={() => {
						model.dropDraft(key);
						location.hash = "#/log";
					}}
				>
					Leave the stop as it was
				</button>
			)}
			{(ready.length > 0 || draft.at !== null || draft.gauge !== null) && correctedStop === null && (
				<button type="button" class="button wide" onClick={startOver}>
					Start this form over
				</button>
			)}
			{asking && <LeanQuestion preview={asking} unit={unit} onBack={dismiss} onSave={() => trySave(true)} />}
		</>
	);
}

function saveWords(amounts: readonly number[], unit: Parameters<typeof volume>[1]): string {
	return amounts.length === 0 ? "Save" : `Save ${amounts.map((litres) => exactVolume(litres, unit)).join(" + ")}`;
}

function amountFault(
	fault: NonNullable<ReturnType<typeof faultOf>>,
	most: number,
	unit: Parameters<typeof volume>[1],
): string {
	switch (fault) {
		case "empty":
			return "How much was pumped? Type the amount as the pump shows it.";
		case "notANumber":
			return "This is not a number: use digits and one point or comma.";
		case "tooSmall":
			return "The amount must be more than nothing.";
		case "tooLarge":
			return `This tank cannot hold more than ${volume(most, unit)}: check the amount, the unit and the tank’s capacity under Car.`;
	}
}
