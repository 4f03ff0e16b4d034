import { useState } from "preact/hooks";
import type { Car } from "../../../domain/vehicle";
import { type Card, calibrationOf, isExpired, readCard } from "../../../share/card";
import { isoWithOffset, useAppState } from "../../app";
import { flashedNow } from "../../calibrations";
import { differences } from "../../cardFacts";
import { CardFacts } from "../../components/CardFacts";
import { Check } from "../../components/Check";
import { Choice } from "../../components/Choice";
import { Unreadable } from "../../components/Unreadable";
import { date } from "../../format";
import { keepForCar, keepForSetup } from "../../keepCard";
import { typedNumber } from "../../typedNumber";
import { calibrationWords } from "../../words/calibration";
import { cardWords } from "../../words/card";
import "../hand/HandingCard.css";

/** A card as it came: all that it says, what it would change, and nothing kept without "Keep". */
export function CardReceived({ payload }: { readonly payload: string }) {
	const { state, now } = useAppState();
	// Until all that was asked for is there, the question stays.
	const [keeping, setKeeping] = useState(false);
	const words = cardWords();
	const read = readCard(payload);
	if (!read.ok) return <Unreadable why={read.error} />;
	const card = read.value;
	const expired = isExpired(card, isoWithOffset(now()).slice(0, 10));
	const known = state.car?.calibrations.some(({ id }) => id === calibrationOf(card).id) ?? false;
	return (
		<>
			<section class="card">
				<h2>{words.received(card.name)}</h2>
				<p>{words.receivedAbout}</p>
				<CardFacts card={card} />
			</section>
			{expired && card.validUntil ? (
				<section class="card">
					<p class="fault" role="alert">
						{words.expired(date(`${card.validUntil}T12:00:00`))}
					</p>
					<Leave />
				</section>
			) : known && !keeping ? (
				<section class="card">
					<p>
						<strong>{words.known}</strong>
					</p>
					<a class="button main" href="#/car">
						{words.toList}
					</a>
				</section>
			) : state.car ? (
				<ForCar key={state.car.id} car={state.car} card={card} onKeep={() => setKeeping(true)} />
			) : (
				<ForSetup card={card} />
			)}
		</>
	);
}

function Leave() {
	const { state } = useAppState();
	return (
		<a class="button wide" href={state.car ? "#/tank" : "#/setup"}>
			{cardWords().leave}
		</a>
	);
}

function ForSetup({ card }: { readonly card: Card }) {
	const { model } = useAppState();
	const words = cardWords();
	const [busy, setBusy] = useState(false);
	async function keep(): Promise<void> {
		setBusy(true);
		if (await keepForSetup(model, calibrationOf(card))) location.hash = "#/setup";
		setBusy(false);
	}
	return (
		<section class="card">
			<p>{words.keepNoCar}</p>
			<button type="button" class="button main" disabled={busy} onClick={keep}>
				{words.keepFirst}
			</button>
			<Leave />
		</section>
	);
}

interface ForCarProps {
	readonly car: Car;
	readonly card: Card;
	/** It is under way, and may break off half-way. */
	readonly onKeep: () => void;
}

function ForCar({ car, card, onKeep }: ForCarProps) {
	const { model, state, toasts, now } = useAppState();
	const words = cardWords();
	const first = car.calibrations.length === 0;
	const { leanestLambda } = card;
	const newLambda = leanestLambda !== undefined && car.fuelSystem?.leanestLambda !== leanestLambda;
	const [flashed, setFlashed] = useState(first);
	const [lambda, setLambda] = useState(newLambda && car.fuelSystem?.leanestLambda === undefined);
	const [busy, setBusy] = useState(false);
	const [fault, setFault] = useState<string | null>(null);
	async function keep(): Promise<void> {
		setBusy(true);
		onKeep();
		const kept = await keepForCar(model, car, { calibration: calibrationOf(card), flashed, lambda, now: now() });
		setBusy(false);
		setFault(kept === "full" ? words.tooMany : kept === "notFlashed" ? words.notFlashed : null);
		if (kept !== true) return;
		toasts.show((flashed ? words.keptFlashed : words.kept)(card.name));
		location.hash = "#/car";
	}
	return (
		<>
			<InForce car={car} card={card} />
			<section class="card">
				{state.cars.length > 1 && (
					<Choice
						label={words.forCar}
						options={state.cars.map(({ id, name }) => ({ value: id, label: name }))}
						value={car.id}
						onChange={(activeCar) => model.saveSettings({ activeCar })}
					/>
				)}
				{first ? (
					<p>{calibrationWords().first}</p>
				) : (
					<Check
						label={calibrationWords().flashed}
						more={calibrationWords().flashedMore}
						checked={flashed}
						onChange={setFlashed}
					/>
				)}
				{newLambda && (
					<Check
						label={words.lambdaToo}
						more={words.lambdaTooMore(`λ ${typedNumber(leanestLambda)}`)}
						checked={lambda}
						onChange={setLambda}
					/>
				)}
				{fault && (
					<p class="fault" role="alert">
						{fault}
					</p>
				)}
				<button type="button" class="button main" disabled={busy || !state.events} onClick={keep}>
					{words.keep}
				</button>
				<Leave />
			</section>
		</>
	);
}

function InForce({ car, card }: Pick<ForCarProps, "car" | "card">) {
	const { state } = useAppState();
	const words = cardWords();
	const now = flashedNow(car, state.events ?? []);
	if (!now) return null;
	const differing = differences(now, card);
	return (
		<section class="card">
			<h2>{words.inForce(now.name)}</h2>
			{differing.length === 0 && <p>{words.same}</p>}
			<ul class="handed">
				{differing.map((line) => (
					<li key={line} class="number">
						{line}
					</li>
				))}
			</ul>
		</section>
	);
}
