import { useState } from "preact/hooks";
import { useAppState } from "../app";
import { type Correctable, correctionOf, readCorrection } from "../correctionForm";
import { lastOdometer } from "../fillChoices";
import { unitOf } from "../model";
import { entryScreenWords } from "../words/entry";
import { CorrectionFields } from "./CorrectionFields";
import { Form } from "./Form";
import { GaugeField } from "./GaugeField";
import { OdometerField } from "./OdometerField";

interface CorrectEntryProps {
	readonly event: Correctable;
	/** Puts the new event in the old one's place; true once that is on disk. */
	readonly onReplace: (event: Correctable) => Promise<boolean>;
	readonly onClose: () => void;
}

/** A start or a gauge note, put right: a new entry in the place of the old one. */
export function CorrectEntry({ event, onReplace, onClose }: CorrectEntryProps) {
	const { model, state } = useAppState();
	const unit = unitOf(state);
	const [form, setForm] = useState(() => correctionOf(event, unit));
	const [id] = useState(model.newId);
	const [refused, setRefused] = useState(false);
	const read = readCorrection(form, event, id, unit);
	const faults = refused && !read.ok ? read.error : {};
	function save(): Promise<boolean> | null {
		setRefused(!read.ok);
		return read.ok ? onReplace(read.value) : null;
	}
	const isStart = event.kind === "start";
	const words = entryScreenWords();
	return (
		<section class="card">
			<h2>{words.correct(event.kind)}</h2>
			<Form label={words.correct(event.kind)} once onSave={save}>
				{isStart && <CorrectionFields form={form} faults={faults} onChange={setForm} />}
				<GaugeField label={words.form.gaugeThen} value={form.gauge} onChange={(gauge) => setForm({ ...form, gauge })} />
				{faults.gauge && (
					<p class="fault" role="alert">
						{faults.gauge}
					</p>
				)}
				{!isStart && (
					<OdometerField
						typed={form.odometer}
						last={lastOdometer(state.events ?? [], Date.parse(event.at), [event.id])}
						unit={unit}
						onInput={(odometer) => setForm({ ...form, odometer })}
					/>
				)}
				<button type="submit" class="button main">
					{words.form.save}
				</button>
				<button type="button" class="button wide" onClick={onClose}>
					{words.form.leave}
				</button>
			</Form>
		</section>
	);
}
