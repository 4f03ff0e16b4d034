import { useState } from "preact/hooks";
import type { ReadingEvent } from "../../domain/event";
import { isoWithOffset, useAppState } from "../app";
import { useMoment } from "../moment";
import {
	type CorrectionDraft,
	type ReadingCorrection,
	readCorrectionDraft,
	readingCorrectionOf,
	readReadingCorrection,
} from "../readingCorrection";
import { useDraft } from "../useDraft";
import { entryScreenWords } from "../words/entry";
import { Form } from "./Form";
import { PumpSampleFields } from "./PumpSampleFields";
import { NumberField, TextField } from "./TextField";
import { WhenField } from "./WhenField";

interface CorrectReadingProps {
	readonly event: ReadingEvent;
	/** Puts the new event in the old one's place; true once that is on disk. */
	readonly onReplace: (event: ReadingEvent) => Promise<boolean>;
	readonly onClose: () => void;
}

/** A reading put right: a new entry in the place of the old one. */
export function CorrectReading({ event, onReplace, onClose }: CorrectReadingProps) {
	const { model, state, now } = useAppState();
	const key = `${state.car?.id}/correct reading/${event.id}`;
	const first = () => ({ id: model.newId(), form: readingCorrectionOf(event) });
	const { draft, change: keep, leave } = useDraft<CorrectionDraft>(key, readCorrectionDraft, first);
	const [refused, setRefused] = useState(false);
	const moment = useMoment(state.events);
	const words = entryScreenWords().form;
	if (!draft) return <p class="soft late">{words.opening}</p>;
	const { id, form } = draft;
	const read = readReadingCorrection(form, event, id, isoWithOffset(moment));
	const faults = refused && !read.ok ? read.error : {};
	const change = (part: Partial<ReadingCorrection>) => keep({ id, form: { ...form, ...part } });
	const events = state.events ?? [];
	function save(): Promise<boolean> | null {
		setRefused(!read.ok);
		return read.ok ? replaced(read.value) : null;
	}
	async function replaced(corrected: ReadingEvent): Promise<boolean> {
		const done = await onReplace(corrected);
		if (done) await forget();
		return done;
	}
	async function forget(): Promise<void> {
		leave(true);
		await model.dropDraft(key);
	}
	function close(): void {
		forget();
		onClose();
	}
	const isTrim = event.of === "trim";
	const Value = isTrim ? TextField : NumberField;
	return (
		<section class="card">
			<h2>{entryScreenWords().correct("reading")}</h2>
			<Form label={entryScreenWords().correct("reading")} once onSave={save}>
				<Value
					label={isTrim ? words.trim : words.measured}
					value={form.value}
					fault={faults.value}
					onInput={(value) => change({ value })}
				/>
				<NumberField
					label={isTrim ? words.trimSd : words.sd}
					hint={words.sdHint}
					value={form.sd}
					fault={faults.sd}
					onInput={(sd) => change({ sd })}
				/>
				{isTrim && (
					<NumberField
						label={words.calibratedFor}
						value={form.calibratedFor}
						fault={faults.calibratedFor}
						onInput={(calibratedFor) => change({ calibratedFor })}
					/>
				)}
				{form.product && (
					<PumpSampleFields
						events={events}
						place={form.place}
						product={form.product}
						fault={faults.place}
						onChange={change}
					/>
				)}
				<TextField
					label={words.method}
					hint={words.mayBeEmpty}
					value={form.method}
					onInput={(method) => change({ method })}
				/>
				<WhenField value={form.at} now={now()} onChange={(at) => change({ at })} />
				<button type="submit" class="button main">
					{words.save}
				</button>
				<button type="button" class="button wide" onClick={close}>
					{words.leave}
				</button>
			</Form>
		</section>
	);
}
