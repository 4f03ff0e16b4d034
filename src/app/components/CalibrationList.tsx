import { useRef } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import type { Calibration, Car } from "../../domain/vehicle";
import { usualBudget } from "../../domain/warnings";
import { isoWithOffset, useApp } from "../app";
import { budgetWords } from "../calibrationForm";
import { flashEvent, flashedNow, lastFlashed } from "../calibrations";
import { cardTexts } from "../cardFacts";
import { date, exactPercent, exactPercentRange } from "../format";
import { printRoute } from "../route";
import { carWords } from "../words/car";
import "./CalibrationList.css";

interface CalibrationListProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
}

/** The calibrations of a car, and which one is flashed. */
export function CalibrationList({ car, events }: CalibrationListProps) {
	const { model, toasts, now } = useApp();
	const current = flashedNow(car, events);
	const flashed = lastFlashed(events);
	const flashing = useRef(false);
	const words = carWords();
	async function flash({ id, name }: Calibration): Promise<void> {
		if (flashing.current) return;
		flashing.current = true;
		const event = flashEvent(model.newId(), id, events, now());
		const done = await model.append([event]);
		flashing.current = false;
		if (!done) return;
		toasts.show(words.isFlashed(name), {
			label: words.undo,
			run: () => model.takeBack([event.id], isoWithOffset(now())),
		});
	}
	return (
		<section class="card">
			<h2>{words.calibrations}</h2>
			{car.calibrations.length === 0 && <p>{words.noCalibration}</p>}
			<ul class="calibrations">
				{car.calibrations.map((calibration) => (
					<li key={calibration.id} aria-label={calibration.name}>
						<h3>{calibration.name}</h3>
						<Figures calibration={calibration} flashedAt={flashed.get(calibration.id) ?? null} />
						{cardTexts(calibration).map(({ term, is }) => (
							<p key={term}>
								<strong>{term}:</strong> {is}
							</p>
						))}
						{calibration.id === current?.id ? (
							<p class="now">{words.flashedNow}</p>
						) : (
							<button type="button" class="button" onClick={() => flash(calibration)}>
								{words.flashThis}
							</button>
						)}
						<a
							class="button"
							href={printRoute({ screen: "calibration", id: calibration.id })}
							aria-label={words.changeWhich(calibration.name)}
						>
							{words.change}
						</a>
					</li>
				))}
			</ul>
			<a class="button wide" href={printRoute({ screen: "calibration", id: null })}>
				{words.newCalibration}
			</a>
		</section>
	);
}

function Figures({ calibration, flashedAt }: { readonly calibration: Calibration; readonly flashedAt: string | null }) {
	const { calibratedFor, window, leanBudget = usualBudget, knockBudget = usualBudget } = calibration;
	const words = carWords();
	const [madeFor, range] = [exactPercent(calibratedFor), exactPercentRange(...window)];
	return (
		<p class="number">
			{words.calibrationFacts(madeFor, range, budgetWords(leanBudget), budgetWords(knockBudget))}
			{flashedAt !== null && ` ${words.lastFlashed(date(flashedAt))}`}
		</p>
	);
}
