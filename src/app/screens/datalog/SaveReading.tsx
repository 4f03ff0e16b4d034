import { useMemo, useRef, useState } from "preact/hooks";
import type { LogEvent, ReadingEvent } from "../../../domain/event";
import type { Car } from "../../../domain/vehicle";
import { isoWithOffset, useAppState } from "../../app";
import { Choice } from "../../components/Choice";
import { Form } from "../../components/Form";
import { WhenField } from "../../components/WhenField";
import { type Offer, type OfferKind, savedId, savedOf } from "../../dataLogReadings";
import { exactPercent } from "../../format";
import { unitOf } from "../../model";
import { momentAfter, useMoment } from "../../moment";
import { printRoute } from "../../route";
import { signedPercent } from "../../shownByte";
import { useSaveReading } from "../../useSaveReading";
import { dataLogWords } from "../../words/dataLog";
import { ReadingPreviewCard } from "../readings/ReadingPreviewCard";

interface SaveReadingProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	/** Of the log. */
	readonly fingerprint: string;
	/** At least one. */
	readonly offers: readonly Offer[];
	readonly chosen: OfferKind;
	readonly onChoose: (kind: OfferKind) => void;
	/** ISO 8601; null: now. */
	readonly at: string | null;
	readonly onWhen: (at: string | null) => void;
}

/** Which of the readings goes into the account, when it holds, what it would do; only a tap saves it. */
export function SaveReading({ car, events, fingerprint, offers, chosen, onChoose, at, onWhen }: SaveReadingProps) {
	const { state, model, now } = useAppState();
	const words = dataLogWords();
	const names: Readonly<Record<OfferKind, string>> = { trim: words.steady, load: words.load, ethanol: words.ethanol };
	const save = useSaveReading(car.id);
	const opened = useMoment(events);
	const saved = useMemo(() => savedOf(events, fingerprint), [events, fingerprint]);
	const [earlier] = useState(saved.ids);
	// The same event until it is saved: a second try makes no second one.
	const ids = useRef(new Map<OfferKind, string>());
	const { kind, reading } = offers.find((offer) => offer.kind === chosen) ?? offers[0];
	const savedAs = saved.ids.get(kind);
	const others = [...saved.ids.keys()].filter((other) => other !== kind);

	const newId = () => savedId(fingerprint, kind, model.newId());
	function event(time: number): ReadingEvent {
		const before = ids.current.get(kind);
		const id = before && !events.some((event) => event.id === before) ? before : newId();
		ids.current.set(kind, id);
		return { ...reading, id, at: at ?? isoWithOffset(time) };
	}
	return (
		<Form label={words.saveForm} onSave={() => (savedAs ? null : save(event(momentAfter(events, now()))))}>
			<section class="card" aria-label={words.take}>
				<h2>{words.take}</h2>
				{offers.length > 1 && (
					<Choice
						label={words.which}
						hint={words.whichHint}
						options={offers.map((offer) => ({
							value: offer.kind,
							label: names[offer.kind],
							more: saved.ids.has(offer.kind) ? words.savedOffer(amountOf(offer)) : amountOf(offer),
						}))}
						value={kind}
						onChange={onChoose}
					/>
				)}
				<p class="small">{words.when}</p>
				<WhenField value={at} now={now()} onChange={onWhen} />
			</section>
			{savedAs ? (
				<section class="card">
					<p role="status">{earlier.has(kind) ? words.savedBefore : words.savedNow}</p>
					<a class="button wide" href={printRoute({ screen: "entry", id: savedAs })}>
						{words.toEntry}
					</a>
					<a class="button wide" href="#/tank">
						{words.toTank}
					</a>
				</section>
			) : (
				<>
					<ReadingPreviewCard carId={car.id} event={event(opened)} unit={unitOf(state)} />
					{others.length > 0 && <p class="fault">{words.twice}</p>}
					{saved.perhapsCorrected && <p class="fault">{words.perhapsCorrected}</p>}
					<button type="submit" class="button main">
						{words.save(amountOf({ kind, reading }))}
					</button>
				</>
			)}
		</Form>
	);
}

function amountOf({ reading }: Offer): string {
	return reading.of === "trim" ? signedPercent(reading.value) : exactPercent(reading.value);
}
