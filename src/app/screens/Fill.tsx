import { useMemo, useRef, useState } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import { toLitres } from "../../domain/units";
import type { Car } from "../../domain/vehicle";
import { amountFault, saveWords } from "../amountWords";
import { useAppState } from "../app";
import { AmountCard } from "../components/AmountCard";
import { ArrivalFields } from "../components/ArrivalFields";
import { PouredList } from "../components/PouredList";
import { ProductPicker } from "../components/ProductPicker";
import { StopDetails } from "../components/StopDetails";
import { lastOdometer, placesIn, productAfter, productsIn, usualProduct } from "../fillChoices";
import {
	type DraftPour,
	draftOf,
	emptyPour,
	type FillDraft,
	faultOf,
	fillsOf,
	inUnit,
	mostLitres,
	newDraft,
	readFreshDraft,
	stopOf,
} from "../fillDraft";
import { asPlanned, backTo, guidedBy } from "../fillPlan";
import { dateTime } from "../format";
import { fillsOfStop, unitOf } from "../model";
import { useMoment } from "../moment";
import { detailsFault } from "../stopDetails";
import { productName } from "../text";
import { useDraft } from "../useDraft";
import { useNextPour } from "../useNextPour";
import { usePreviewSource } from "../usePreview";
import { useSaveStop } from "../useSaveStop";
import { fillWords } from "../words/fill";
import { shellWords } from "../words/shell";
import { GuidedPour } from "./GuidedPour";
import { LeanQuestion } from "./LeanQuestion";
import { PreviewCard } from "./PreviewCard";
import "./Fill.css";

interface FillScreenProps {
	/** An event whose stop is to be replaced; null for a new stop. */
	readonly correcting: string | null;
	/** The entry before which a stop is missing from the log; none: the stop is being made now. */
	readonly missedBefore?: string;
	/** Where to go afterwards; not named: the tank, or the log after a correction. */
	readonly then?: string;
}

/** Tap in what is pumped. */
export function FillScreen({ correcting, missedBefore, then }: FillScreenProps) {
	const { state } = useAppState();
	const { car, events } = state;
	const opened = useRef<string | null>(null);
	const words = fillWords();
	if (!car || !events) return <p class="soft">{shellWords().opening}</p>;
	const target = events.find(({ id }) => id === correcting);
	if (correcting !== null && target?.kind !== "fill") {
		return (
			<p class="fault">
				{words.notInLog} <a href="#/log">{words.backToLog}</a>
			</p>
		);
	}
	// While it is being saved the stop is void already; reached by going back it never was opened.
	if (target?.kind === "fill" && fillsOfStop(events, target.stop).length > 0) opened.current = correcting;
	if (opened.current !== correcting) {
		return (
			<p class="fault">
				{words.correctedAlready} <a href="#/log">{words.backToLog}</a>
			</p>
		);
	}
	const stop = target?.kind === "fill" ? target.stop : null;
	return (
		<FillForm key={`${car.id} ${stop}`} car={car} events={events} correctedStop={stop} {...{ missedBefore, then }} />
	);
}

interface FillFormProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	readonly correctedStop: string | null;
	readonly missedBefore: string | undefined;
	readonly then: string | undefined;
}

function FillForm({ car, events, correctedStop, missedBefore, then: named }: FillFormProps) {
	const { state, model, toasts, now } = useAppState();
	const unit = unitOf(state);
	const isNow = correctedStop === null && missedBefore === undefined;
	const own = correctedStop === null ? `missed/${missedBefore}` : `correct/${correctedStop}`;
	const key = `${car.id}/${isNow ? "fill" : own}`;
	const places = useMemo(() => placesIn(events), [events]);
	const products = useMemo(() => productsIn(events), [events]);
	const {
		draft: stored,
		change,
		leave,
		reset,
	} = useDraft<FillDraft>(
		key,
		(raw) => readFreshDraft(raw, now()),
		() =>
			correctedStop === null
				? newDraft(model.newId, usualProduct(events), places[0] ?? null, unit)
				: draftOf(fillsOfStop(events, correctedStop), unit, model.newId),
	);
	const draft = stored && inUnit(stored, unit);
	// One moment serves all questions, or each key would be another; the event gets the time of saving.
	const opened = useMoment(events);
	const preview = usePreviewSource(car.id, draft ? stopOf(asPlanned(draft), car.tank, unit, opened) : null);
	const then = named ?? (correctedStop === null ? "#/tank" : "#/log");
	const { saving, asking, save, dismiss } = useSaveStop({ car, unit, draftKey: key, change, leave, then });
	const nextPour = useNextPour({ car, unit, draft: draft ?? null, change });
	const [fault, setFault] = useState<string | null>(null);
	const picker = useRef<HTMLDivElement>(null);
	const onward = useRef<HTMLButtonElement>(null);
	const begun = draft?.at ?? null;
	const last = useMemo(
		() => lastOdometer(events, begun === null ? opened : Date.parse(begun), draft?.instead ?? []),
		[events, begun, opened],
	);
	const words = fillWords();
	if (!draft) return <p class="soft">{words.opening}</p>;

	const guided = guidedBy(draft);
	const open = draft.pours[draft.pours.length - 1];
	const settled = draft.pours.slice(0, -1);
	const most = mostLitres(car.tank);
	const openFault = faultOf(open, car.tank, unit);
	const amount = openFault === null ? toLitres(Number(open.typed.replace(",", ".")), unit) : 0;
	const ready = fillsOf(draft, car.tank, unit, opened);

	// A plan's last pour that is still to come: saving now leaves it out.
	const unpoured = guided && settled.length > 0 && open.typed === "" ? open.product : null;

	function changeOpen(part: Partial<DraftPour>): void {
		setFault(null);
		// With another amount more may fit than was said.
		const plan = draft?.plan && guided?.step === 0 ? { ...draft.plan, rest: null } : (draft?.plan ?? null);
		if (draft) change({ ...draft, plan, pours: [...settled, { ...open, ...part }] });
	}
	/** What takes something off the screen can be undone. */
	function changeUndoably(next: FillDraft, said: string): void {
		if (!draft) return;
		const before = draft;
		setFault(null);
		change(next);
		toasts.show(said, { label: shellWords().undo, run: () => change(before) });
	}
	async function goOn(): Promise<void> {
		if (!draft) return;
		if (openFault !== null) {
			setFault(amountFault(openFault, most, unit));
			return;
		}
		if (guided) {
			if (!(await nextPour.next(guided))) return;
		} else {
			change({ ...draft, pours: [...draft.pours, emptyPour(model.newId(), productAfter(events, open.product))] });
		}
		picker.current?.scrollIntoView?.({ block: "start" });
	}
	function startOver(): void {
		if (!draft) return;
		const before = draft;
		reset();
		toasts.show(words.emptied, { label: shellWords().undo, run: () => change(before) });
	}
	function trySave(agreed: boolean): void {
		if (!draft) return;
		const unusable = settled.find((pour) => faultOf(pour, car.tank, unit) !== null);
		if (unusable) {
			setFault(words.badAmount(productName(unusable.product)));
		} else if (openFault !== null && !(openFault === "empty" && settled.length > 0)) {
			setFault(amountFault(openFault, most, unit));
		} else if (detailsFault(draft, unit)) {
			setFault(words.badDetails);
		} else {
			save(draft, agreed);
		}
	}

	return (
		<>
			<h2 class="hidden">{shellWords().tabs.fill}</h2>
			{draft.instead.length > 0 && <p class="card">{words.correcting(dateTime(draft.at ?? ""))}</p>}
			{missedBefore !== undefined && <p class="card">{words.missed}</p>}
			<ArrivalFields draft={draft} places={places} now={now()} onChange={change} />
			{!guided && isNow && car.calibrations.length > 0 && (
				<a class="button wide" href="#/plan">
					{words.howMuch}
				</a>
			)}
			<PouredList
				pours={settled}
				unit={unit}
				planned={draft.plan?.ids ?? []}
				onTakeOut={({ id, product }) =>
					changeUndoably(
						{ ...draft, pours: draft.pours.filter((pour) => pour.id !== id) },
						words.takenOut(productName(product)),
					)
				}
				onBack={({ id }) => changeUndoably(backTo(draft, id), words.backToFirst)}
			/>
			<div ref={picker} class="picker">
				{guided ? (
					<GuidedPour
						guided={guided}
						open={open}
						amount={amount}
						poured={ready.find(({ id }) => id === guided.plan.ids[0])?.litres ?? 0}
						unit={unit}
						onTake={(typed) => {
							changeOpen({ typed });
							onward.current?.scrollIntoView?.({ block: "end" });
						}}
						onLeave={() => changeUndoably({ ...draft, plan: null }, words.planLeft)}
					/>
				) : (
					<ProductPicker recent={products} chosen={open.product} onChoose={(product) => changeOpen({ product })} />
				)}
			</div>
			<PreviewCard source={preview} unit={unit} />
			<AmountCard
				pour={open}
				label={settled.length > 0 ? words.amountOf(settled.length + 1) : words.amount}
				amount={amount}
				most={most}
				unit={unit}
				source={guided?.next ? null : preview}
				refused={fault !== null}
				fault={fault === null && openFault === "tooLarge" ? amountFault("tooLarge", most, unit) : null}
				onChange={changeOpen}
			>
				{!guided && (
					<button type="button" class="button wide" onClick={goOn}>
						{words.second}
					</button>
				)}
			</AmountCard>
			<StopDetails draft={draft} unit={unit} currency={car.currency} last={last} now={now()} onChange={change} />
			{fault !== null && (
				<p class="fault" id="amount-fault" role="alert">
					{fault}
				</p>
			)}
			{guided?.next && (
				<button ref={onward} type="button" class="button main" aria-disabled={nextPour.asking} onClick={goOn}>
					{nextPour.asking ? words.reckoning : words.next(productName(guided.next.product))}
				</button>
			)}
			<button
				type="button"
				class={guided?.next || unpoured ? "button wide" : "button main"}
				aria-disabled={saving}
				onClick={() => trySave(false)}
			>
				{saving
					? words.saving
					: saveWords(
							ready.map(({ litres }) => litres),
							unit,
							unpoured,
						)}
			</button>
			{!isNow && (
				<button
					type="button"
					class="button wide"
					onClick={() => {
						model.dropDraft(key);
						location.hash = then;
					}}
				>
					{missedBefore === undefined ? words.leaveStop : words.leaveLog}
				</button>
			)}
			{(ready.length > 0 || draft.at !== null || draft.gauge !== null || draft.plan !== null) && isNow && (
				<button type="button" class="button wide" onClick={startOver}>
					{words.startOver}
				</button>
			)}
			{asking && <LeanQuestion preview={asking} unit={unit} onBack={dismiss} onSave={() => trySave(true)} />}
		</>
	);
}
