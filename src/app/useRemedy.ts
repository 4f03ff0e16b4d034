/** Carrying out what settles an explanation: at once and with the way back, or by a form that is filled in. */
import type { Explanation } from "../domain/doubt/explanation";
import type { FillEvent, TankEvent } from "../domain/event";
import type { Contradiction } from "../keeper/view";
import { useAppState } from "./app";
import { takenBackWords } from "./doubtWords";
import { placesIn, usualProduct } from "./fillChoices";
import { draftOf, type FillDraft, readDraft } from "./fillDraft";
import { fillsOfStop, unitOf } from "./model";
import { contextOf, type ReadingDraft, readReadingDraft } from "./readingDraft";
import { missedId, missedStop, type Remedy, saysTheSame, supposedStop, takenBack } from "./remedies";
import { printRoute } from "./route";
import { emptyTube, type TubeForm } from "./screens/readings/tubeForm";
import { useTakingBack } from "./useTakingBack";
import { doubtWords } from "./words/doubt";

export function useRemedy({ doubt }: Contradiction) {
	const { model, state, toasts } = useAppState();
	const { busy, change } = useTakingBack();
	const { car, account, settings } = state;
	const carId = car?.id ?? "";
	const unit = unitOf(state);
	const events = account?.events ?? [];
	const explanations = doubt.explanations.map(({ explanation }) => explanation);

	async function settle(remedy: Remedy, explanation: Explanation): Promise<void> {
		switch (remedy.kind) {
			case "takeBack": {
				const { voided, added } = takenBack(remedy, stopWith(remedy.event), model.newId);
				await change([], voided, takenBackWords(remedy), added);
				return;
			}
			case "correct": {
				const { event } = remedy;
				if (event.kind === "fill") await fillInStop(event, explanation);
				location.hash = printRoute({ screen: "doubt", id: event.id });
				return;
			}
			case "enter":
				await fillInMissed(remedy);
				location.hash = printRoute({ screen: "doubt", id: missedId(remedy.before.id) });
				return;
			case "test":
				await fillInTest(remedy.fill);
				location.hash = printRoute({ screen: "measure", id: "tube" });
		}
	}

	function stopWith(event: TankEvent) {
		return event.kind === "fill" ? fillsOfStop(events, event.stop) : [];
	}

	async function fillInStop(fill: FillEvent, explanation: Explanation): Promise<void> {
		const fills = stopWith(fill);
		if (fills.length === 0) return;
		const other = [
			draftOf(fills, unit, noId),
			...explanations.map((explanation) => supposedStop(explanation, fills, unit, noId)),
		];
		const supposed = supposedStop(explanation, fills, unit, model.newId);
		const filledIn = await fillIn(`${carId}/correct/${fill.stop}`, supposed, other);
		if (filledIn && !saysTheSame(supposed, other[0])) toasts.show(doubtWords().filledIn);
	}

	async function fillInMissed({ before, product }: Extract<Remedy, { kind: "enter" }>): Promise<void> {
		const lines = account?.lines ?? [];
		const previous = lines[lines.findIndex(({ event }) => event.id === before.id) - 1]?.event;
		const other = explanations.flatMap((explanation) =>
			explanation.kind === "missing" ? [missedStop(before, previous, explanation.product, unit, noId)] : [],
		);
		const draft = missedStop(before, previous, product, unit, model.newId);
		await fillIn(`${carId}/missed/${before.id}`, draft, other);
	}

	/** True if it is. `others`: what may lie there without anybody having typed it; what somebody typed stays. */
	async function fillIn(key: string, draft: FillDraft, others: readonly FillDraft[]): Promise<boolean> {
		const kept = readDraft(await model.draft(key));
		const free = !kept || others.some((other) => saysTheSame(kept, other));
		if (free) await model.saveDraft(key, draft);
		else toasts.show(doubtWords().begun);
		return free;
	}

	async function fillInTest({ place, product }: FillEvent): Promise<void> {
		if (!car) return;
		const key = `${carId}/measure/tube`;
		const kept = readReadingDraft<TubeForm>(await model.draft(key));
		if (kept && kept.form.layer !== "") {
			toasts.show(doubtWords().begun);
			return;
		}
		const context = contextOf(car, events, unit, settings.instruments);
		const form = kept?.form ?? emptyTube(context, placesIn(events)[0] ?? null, usualProduct(events));
		const draft: ReadingDraft<TubeForm> = {
			id: kept?.id ?? model.newId(),
			at: null,
			triedAt: null,
			notedAt: null,
			form: { ...form, of: "pump", place: place ?? null, product },
		};
		await model.saveDraft(key, draft);
	}

	return { busy, settle };
}

/** Of drafts that are only compared. */
const noId = () => "";
