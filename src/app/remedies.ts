/** What settles an explanation: which entry is taken back, put right or added, and what is filled in for that. */
import type { Explanation } from "../domain/doubt/explanation";
import type { FillEvent, LevelEvent, Product, TankEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import { isoWithOffset } from "./app";
import { type DraftPour, draftOf, type FillDraft, newDraft, typedAmount } from "./fillDraft";

export type Remedy =
	/** The entry counts no more, or counts without a part of it. */
	| { readonly kind: "takeBack"; readonly event: TankEvent; readonly part: "entry" | Part }
	/** The entry's form opens, of a stop with what the explanation supposes filled in. */
	| { readonly kind: "correct"; readonly event: TankEvent }
	/** A fill that was never entered. */
	| { readonly kind: "enter"; readonly before: TankEvent; readonly product: Product }
	| { readonly kind: "test"; readonly fill: FillEvent };

type Part = "gauge" | "toClick" | "odometerKm";

/** The surest way first. */
export function remediesFor(explanation: Explanation, entries: readonly TankEvent[]): Remedy[] {
	const event = entries.find(({ id }) => id === explanation.event);
	if (!event) return [];
	const without = (part: "entry" | Part): Remedy[] => [
		{ kind: "takeBack", event, part },
		{ kind: "correct", event },
	];
	switch (explanation.kind) {
		case "reading":
			return without("entry");
		case "gauge":
			return without(event.kind === "level" ? "entry" : "gauge");
		case "click":
			return without("toClick");
		case "odometer":
			return without("odometerKm");
		case "start":
		case "amount":
		case "product":
		case "exchange":
			return [{ kind: "correct", event }];
		case "missing":
			return [{ kind: "enter", before: event, product: explanation.product }];
		case "pump":
			return event.kind === "fill" ? [{ kind: "test", fill: event }] : [];
	}
}

export interface Replacement {
	readonly voided: readonly string[];
	readonly added: readonly TankEvent[];
}

/** Taking an entry back, or a part of it: then a new one without it counts. A stop is replaced as a whole, as its correction does. */
export function takenBack(
	{ event, part }: Extract<Remedy, { kind: "takeBack" }>,
	fills: readonly FillEvent[],
	newId: () => string,
): Replacement {
	if (part === "entry" || event.kind === "start" || event.kind === "reading") return { voided: [event.id], added: [] };
	if (event.kind === "level") return { voided: [event.id], added: [withoutPart({ ...event, id: newId() }, part)] };
	const stop = newId();
	const added = fills.map((fill) => {
		const again = { ...fill, id: newId(), stop };
		return fill.id === event.id ? withoutPart(again, part) : again;
	});
	return { voided: fills.map(({ id }) => id), added };
}

function withoutPart<Event extends FillEvent | LevelEvent>(event: Event, part: Part): Event {
	return Object.fromEntries(Object.entries(event).filter(([name]) => name !== part)) as unknown as Event;
}

/** The stop's correction with what an explanation supposes filled in. `fills`: those of the stop, in order. */
export function supposedStop(
	explanation: Explanation,
	fills: readonly FillEvent[],
	unit: VolumeUnit,
	newId: () => string,
): FillDraft {
	const draft = draftOf(fills, unit, newId);
	const at = (id: string) => fills.findIndex((fill) => fill.id === id);
	const changed = (id: string, part: (pour: DraftPour) => Partial<DraftPour>): FillDraft => ({
		...draft,
		pours: draft.pours.map((pour, i) => (i === at(id) ? { ...pour, ...part(pour) } : pour)),
	});
	switch (explanation.kind) {
		case "amount":
			return changed(explanation.event, () => ({ typed: typedAmount(explanation.litres, unit) }));
		case "product":
			return changed(explanation.event, () => ({ product: explanation.product }));
		case "exchange": {
			const typed = draft.pours.map((pour) => pour.typed);
			const [one, other] = [at(explanation.event), at(explanation.other)];
			[typed[one], typed[other]] = [typed[other], typed[one]];
			return { ...draft, pours: draft.pours.map((pour, i) => ({ ...pour, typed: typed[i] })) };
		}
		case "click":
			return changed(explanation.event, () => ({ toClick: false }));
		default:
			return draft;
	}
}

/** In an address, for a stop missing before an entry. */
export function missedId(before: string): string {
	return `before ${before}`;
}

/** A fill that was never entered, halfway between two entries: the driver puts the time right, and types the amount. */
export function missedStop(
	before: TankEvent,
	previous: TankEvent | undefined,
	product: Product,
	unit: VolumeUnit,
	newId: () => string,
): FillDraft {
	const end = Date.parse(before.at);
	const begin = previous ? Date.parse(previous.at) : end - 2 * dayMs;
	const middle = (begin + end) / 2;
	const minute = Math.floor(middle / 60_000) * 60_000;
	const at = isoWithOffset(minute > begin ? minute : middle);
	return { ...newDraft(newId, product, null, unit), at };
}

const dayMs = 86_400_000;

/** Whether two drafts say the same, whatever ids they got. */
export function saysTheSame(one: FillDraft, other: FillDraft): boolean {
	return JSON.stringify(saidIn(one)) === JSON.stringify(saidIn(other));
}

function saidIn({ at, place, gauge, odometer, unit, triedAt, pours }: FillDraft) {
	const said = pours.map(({ product: { id, range }, typed, toClick, price }) => [id, range, typed, toClick, price]);
	return [at, place, gauge, odometer, unit, triedAt, said];
}
