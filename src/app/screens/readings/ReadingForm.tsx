import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { LevelEvent, LogEvent, ReadingEvent } from "../../../domain/event";
import type { Car } from "../../../domain/vehicle";
import { isoWithOffset, useAppState } from "../../app";
import { Form } from "../../components/Form";
import { WhenField } from "../../components/WhenField";
import { dateTime } from "../../format";
import { unitOf } from "../../model";
import { momentAfter, useMoment } from "../../moment";
import {
	contextOf,
	type Faults,
	type Read,
	type ReadingContext,
	type ReadingDraft,
	type ReadingKind,
	type Remembered,
	readReadingDraft,
	timeOf,
} from "../../readingDraft";
import { useDraft } from "../../useDraft";
import { useSaveReading } from "../../useSaveReading";
import { readingsWords } from "../../words/readings";
import { HowTo } from "./HowTo";
import { ReadingPreviewCard } from "./ReadingPreviewCard";
import "../Entry.css";

/** What the fields of a way of measuring are given. */
export interface Fields<FormOf> {
	readonly form: FormOf;
	/** Shown once saving was tried. */
	readonly faults: Faults<FormOf>;
	readonly change: (part: Partial<FormOf>) => void;
	readonly context: ReadingContext;
}

interface ReadingFormProps<FormOf> {
	readonly kind: ReadingKind;
	readonly title: string;
	readonly about: string;
	readonly steps: readonly string[];
	readonly cautions: readonly string[];
	readonly empty: (context: ReadingContext) => FormOf;
	/** What is filled in and was not touched, for another time; null: now. */
	readonly follow?: (form: FormOf, context: ReadingContext, at: string | null) => FormOf;
	readonly read: (form: FormOf) => Read<FormOf>;
	/** What to offer the next time. */
	readonly remember: (form: FormOf, car: Car) => Remembered;
	readonly children: (fields: Fields<FormOf>) => ComponentChildren;
}

/** A way of measuring: how it is done, its fields, what the result would do, and saving it. */
export function ReadingForm<FormOf extends object>(props: ReadingFormProps<FormOf>) {
	const { car, events } = useAppState().state;
	if (!car || !events) return <p class="soft late">{readingsWords().openingLog}</p>;
	return <FormForCar {...props} car={car} events={events} />;
}

interface FormForCarProps<FormOf> extends ReadingFormProps<FormOf> {
	readonly car: Car;
	readonly events: readonly LogEvent[];
}

function FormForCar<FormOf extends object>(props: FormForCarProps<FormOf>) {
	const { kind, title, about, steps, cautions, empty, follow, read, remember, children, car, events } = props;
	const { state, model, toasts, now } = useAppState();
	const words = readingsWords();
	const keep = useSaveReading(car.id);
	const unit = unitOf(state);
	const { instruments } = state.settings;
	const context = contextOf(car, events, unit, instruments);
	const key = `${car.id}/measure/${kind}`;
	const unsaved = { at: null, triedAt: null, notedAt: null };
	const first = (): ReadingDraft<FormOf> => ({ ...unsaved, id: model.newId(), form: empty(context) });
	const { draft: kept, change, leave, reset } = useDraft<ReadingDraft<FormOf>>(key, readReadingDraft, first);
	const opened = useMoment(events);
	const [refused, setRefused] = useState(false);
	if (!kept) return <p class="soft late">{words.openingForm}</p>;

	const draft = dated(kept);
	const reading = read(draft.form);
	const event = reading.ok ? recorded(draft, opened) : null;
	const untouched = draft.at === null && isEmpty(draft.form);

	/** With its time, where that is no longer "now". */
	function dated(draft: ReadingDraft<FormOf>): ReadingDraft<FormOf> {
		const at = timeOf(draft, now());
		return { ...draft, at, form: follow ? follow(draft.form, context, at) : draft.form };
	}
	function isEmpty(form: FormOf): boolean {
		return JSON.stringify(form) === JSON.stringify(empty(context));
	}
	function typed(part: Partial<FormOf>): void {
		const form = { ...draft.form, ...part };
		change({ ...dated(draft), form, notedAt: isEmpty(form) ? null : now() });
	}
	function choose(at: string | null): void {
		const notedAt = isEmpty(draft.form) ? null : now();
		change(at === null ? { ...draft, ...unsaved, notedAt } : { ...draft, at });
	}
	function recorded(draft: ReadingDraft<FormOf>, time: number): ReadingEvent | LevelEvent | null {
		const result = read(draft.form);
		const at = draft.at ?? draft.triedAt ?? isoWithOffset(time);
		return result.ok ? ({ ...result.value, id: draft.id, at } as ReadingEvent | LevelEvent) : null;
	}
	function save(): Promise<boolean> | null {
		setRefused(!reading.ok);
		// Hours may have passed since it was drawn.
		return reading.ok ? saved(dated(draft)) : null;
	}
	async function saved(draft: ReadingDraft<FormOf>): Promise<boolean> {
		const tried = { ...draft, triedAt: draft.triedAt ?? isoWithOffset(momentAfter(events, now())) };
		// On disk first: written after the event, it would come back as a form that was never saved.
		await change(tried);
		leave(true);
		const done = await write(tried);
		leave(done);
		if (done) location.hash = "#/tank";
		return done;
	}
	async function write(tried: ReadingDraft<FormOf>): Promise<boolean> {
		const event = recorded(tried, now());
		if (!event || !(await keep(event, key))) return false;
		const remembered = { ...instruments, ...remember(tried.form, car) };
		if (JSON.stringify(remembered) !== JSON.stringify(instruments)) model.saveSettings({ instruments: remembered });
		return true;
	}
	function startOver(): void {
		const before = draft;
		reset();
		setRefused(false);
		toasts.show(words.emptied, { label: words.undo, run: () => change(before) });
	}

	return (
		<>
			<a class="button back" href="#/measure">
				{words.otherWays}
			</a>
			<HowTo
				title={title}
				about={about}
				steps={steps}
				cautions={cautions}
				known={Object.keys(remember(draft.form, car)).some((name) => Object.hasOwn(instruments, name))}
			/>
			<Form label={title} once onSave={save}>
				<section class="card" aria-label={words.figures}>
					{children({
						form: draft.form,
						faults: refused && !reading.ok ? reading.error : {},
						change: typed,
						context,
					})}
				</section>
				<details class="card">
					<summary>{words.when(draft.at === null ? words.now : dateTime(draft.at))}</summary>
					<WhenField value={draft.at} now={now()} onChange={choose} />
				</details>
				<ReadingPreviewCard carId={car.id} event={event} unit={unit} />
				{refused && !reading.ok && (
					<p class="fault" role="alert">
						{words.mend}
					</p>
				)}
				<button type="submit" class="button main">
					{words.save}
				</button>
				{!untouched && (
					<button type="button" class="button wide" onClick={startOver}>
						{words.startOver}
					</button>
				)}
			</Form>
		</>
	);
}
