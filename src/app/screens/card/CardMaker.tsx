import { useState } from "preact/hooks";
import type { Card } from "../../../share/card";
import { longestNotes, longestWayBack } from "../../../share/card";
import { lastDay } from "../../../store/limits";
import { isoWithOffset, useAppState } from "../../app";
import { type CardFaults, type CardForm, cardFormOf, emptyCard, readCardFields, readCardForm } from "../../cardForm";
import { BudgetChoices } from "../../components/BudgetChoices";
import { CalibrationFields } from "../../components/CalibrationFields";
import { Choice } from "../../components/Choice";
import { DayField } from "../../components/DayField";
import { Form } from "../../components/Form";
import { LongField } from "../../components/LongField";
import { NumberField } from "../../components/TextField";
import { useDraft } from "../../useDraft";
import { cardWords } from "../../words/card";
import { shellWords } from "../../words/shell";
import { CardMade } from "./CardMade";

const draftKey = "card";

/** The tuner's form; no car is needed for it. */
export function CardMaker() {
	const { state, now } = useAppState();
	const words = cardWords();
	const { draft: form, change } = useDraft<CardForm>(draftKey, readCardForm, () => emptyCard);
	const [refused, setRefused] = useState(false);
	const [made, setMade] = useState<Card | null>(null);
	if (!form) return <p class="soft late">{words.opening}</p>;
	if (made) return <CardMade card={made} onChange={() => setMade(null)} />;

	const today = isoWithOffset(now()).slice(0, 10);
	const read = readCardFields(form, today);
	const faults: CardFaults = refused && !read.ok ? read.error : {};
	function make(): Promise<boolean> | null {
		setRefused(!read.ok);
		if (!read.ok) return null;
		setMade(read.value);
		window.scrollTo(0, 0);
		return Promise.resolve(true);
	}
	return (
		<Form label={words.title} onSave={make}>
			<section class="card">
				<h2>{words.title}</h2>
				<p>{words.about}</p>
				{state.car && state.car.calibrations.length > 0 && (
					<BeginWith form={form} calibrations={state.car.calibrations} onChange={change} />
				)}
				<CalibrationFields
					form={form.calibration}
					faults={faults}
					onChange={(calibration) => change({ ...form, calibration })}
				/>
				{faults.name && (
					<p class="fault" tabIndex={-1}>
						{faults.name}
					</p>
				)}
			</section>
			<BudgetChoices lean={form.lean} knock={form.knock} onChange={(changed) => change({ ...form, ...changed })} />
			<section class="card">
				<NumberField
					label={words.lambda}
					hint={words.lambdaHint}
					value={form.lambda}
					fault={faults.lambda}
					onInput={(lambda) => change({ ...form, lambda })}
				/>
				<LongField
					label={words.notes}
					hint={words.notesHint}
					left={words.left(Math.max(0, longestNotes - form.notes.trim().length))}
					value={form.notes}
					fault={faults.notes}
					onInput={(notes) => change({ ...form, notes })}
				/>
				<LongField
					label={words.wayBack}
					hint={words.wayBackHint}
					left={words.left(Math.max(0, longestWayBack - form.wayBack.trim().length))}
					value={form.wayBack}
					fault={faults.wayBack}
					onInput={(wayBack) => change({ ...form, wayBack })}
				/>
				<DayField
					label={words.validUntil}
					hint={words.validUntilHint}
					value={form.validUntil}
					min={today}
					max={lastDay}
					fault={faults.validUntil}
					onChange={(validUntil) => change({ ...form, validUntil })}
				/>
			</section>
			{refused && !read.ok && (
				<p class="fault" role="alert">
					{faults.card ?? words.mend}
				</p>
			)}
			<button type="submit" class="button main">
				{words.make}
			</button>
			<a class="button wide" href={state.car ? "#/car" : "#/setup"}>
				{words.back}
			</a>
		</Form>
	);
}

interface BeginWithProps {
	readonly form: CardForm;
	readonly calibrations: readonly Parameters<typeof cardFormOf>[0][];
	readonly onChange: (form: CardForm) => void;
}

function BeginWith({ form, calibrations, onChange }: BeginWithProps) {
	const { toasts } = useAppState();
	const words = cardWords();
	/** What the form was filled with; what differs from it was typed. */
	const [filled, setFilled] = useState(emptyCard);
	const [chosen, setChosen] = useState<string | null>(null);
	function begin(id: string): void {
		setChosen(id);
		const calibration = calibrations.find((each) => each.id === id);
		const next = calibration ? cardFormOf(calibration) : emptyCard;
		setFilled(next);
		onChange(next);
		if (JSON.stringify(form) === JSON.stringify(filled)) return;
		function undo(): void {
			setChosen(chosen);
			setFilled(filled);
			onChange(form);
		}
		toasts.show(words.begun, { label: shellWords().undo, run: undo });
	}
	const options = calibrations.map(({ id, name }) => ({ value: id, label: name }));
	return (
		<Choice
			label={words.from}
			options={[...options, { value: "", label: words.fromNothing }]}
			value={chosen}
			onChange={begin}
		/>
	);
}
