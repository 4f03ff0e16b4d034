import { useRef, useState } from "preact/hooks";
import type { ReadingEvent } from "../../../domain/event";
import type { Car } from "../../../domain/vehicle";
import { askToPersist } from "../../../store/durability";
import { isoWithOffset, useAppState } from "../../app";
import { Choice } from "../../components/Choice";
import { Form } from "../../components/Form";
import { WhenField } from "../../components/WhenField";
import type { Offer, OfferKind } from "../../dataLogReadings";
import { exactPercent } from "../../format";
import { unitOf } from "../../model";
import { signedPercent } from "../../shownByte";
import { changeWords } from "../readings/ReadingForm";
import { ReadingPreviewCard } from "../readings/ReadingPreviewCard";

interface SaveReadingProps {
	readonly car: Car;
	/** At least one. */
	readonly offers: readonly Offer[];
	readonly chosen: OfferKind;
	readonly onChoose: (kind: OfferKind) => void;
	/** ISO 8601; null: now. */
	readonly at: string | null;
	readonly onWhen: (at: string | null) => void;
}

const names: Readonly<Record<OfferKind, string>> = {
	trim: "Fuel trim of steady driving",
	load: "Lambda under load",
	ethanol: "The car’s own report",
};

/** Which of the readings goes into the account, when it holds, what it would do; only a tap saves it. */
export function SaveReading({ car, offers, chosen, onChoose, at, onWhen }: SaveReadingProps) {
	const { state, model, toasts, now } = useAppState();
	const [opened] = useState(now());
	const [saved, setSaved] = useState<readonly OfferKind[]>([]);
	// The same event until it is saved: a second try makes no second one.
	const ids = useRef(new Map<OfferKind, string>());
	const { kind, reading } = offers.find((offer) => offer.kind === chosen) ?? offers[0];
	const isSaved = saved.includes(kind);
	const others = saved.filter((other) => other !== kind);

	function event(time: number): ReadingEvent {
		const id = ids.current.get(kind) ?? model.newId();
		ids.current.set(kind, id);
		return { ...reading, id, at: at ?? isoWithOffset(time) };
	}
	async function save(): Promise<boolean> {
		const before = model.state().now?.estimate.median;
		const written = event(now());
		if (!(await model.appendTo(car.id, [written]))) return false;
		ids.current.delete(kind);
		setSaved((kinds) => [...kinds, kind]);
		toasts.show(`Saved. ${changeWords(before, model.state().now?.estimate.median)}`, {
			label: "Undo",
			async run() {
				const back = await model.takeBack([written.id], isoWithOffset(now()), car.id);
				if (back) setSaved((kinds) => kinds.filter((other) => other !== kind));
			},
		});
		askToPersist();
		return true;
	}

	return (
		<Form label="Save a reading" onSave={() => (isSaved ? null : save())}>
			<section class="card" aria-label="Take a reading into the account">
				<h2>Take a reading into the account</h2>
				{offers.length > 1 && (
					<Choice
						label="Which one?"
						hint="They look at the same fuel in different ways, and are never averaged. One is enough."
						options={offers.map((offer) => ({
							value: offer.kind,
							label: names[offer.kind],
							more: `${amountOf(offer)}${saved.includes(offer.kind) ? ", saved" : ""}`,
						}))}
						value={kind}
						onChange={onChoose}
					/>
				)}
				<p class="small">
					When was it recorded? It counts for what was in the tank then: mend the time if it lies on the wrong side of a
					fill.
				</p>
				<WhenField value={at} now={now()} onChange={onWhen} />
			</section>
			{isSaved ? (
				<section class="card">
					<p role="status">It is in the account.</p>
					<a class="button wide" href="#/tank">
						To the tank
					</a>
				</section>
			) : (
				<>
					<ReadingPreviewCard carId={car.id} event={event(opened)} unit={unitOf(state)} />
					{others.length > 0 && (
						<p class="fault">
							Another reading of this log is in the account: saving this one too counts the same drive twice, and makes
							the estimate look surer than it is.
						</p>
					)}
					<button type="submit" class="button main">
						Save {amountOf({ kind, reading })}
					</button>
				</>
			)}
		</Form>
	);
}

function amountOf({ reading }: Offer): string {
	return reading.of === "trim" ? signedPercent(reading.value) : exactPercent(reading.value);
}
