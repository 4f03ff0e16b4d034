import { useState } from "preact/hooks";
import { isTankEvent, type LogEvent } from "../../../domain/event";
import type { VolumeUnit } from "../../../domain/units";
import type { Car } from "../../../domain/vehicle";
import type { Handing, Standing } from "../../../keeper/handOver";
import { isoWithOffset, useApp, useAppState } from "../../app";
import { noteOpened } from "../../backupNotes";
import { lookAtBackups } from "../../backupState";
import { DotPlot } from "../../components/DotPlot";
import { Facts } from "../../components/Facts";
import { differingIn } from "../../decidedWords";
import { eventSentence } from "../../eventWords";
import { dateTime, percent, percentRange } from "../../format";
import { readUnits, unitsKey } from "../../fuelSystemUnits";
import { unitOf } from "../../model";
import { useAnswer } from "../../useAnswer";
import { handedFaultWords, type Looked } from "../../useTaking";
import { codesWords } from "../../words/codes";
import { handWords } from "../../words/hand";
import "./HandingCard.css";

interface HandingCardProps {
	readonly looked: Looked;
	/** Forgets what was taken. */
	readonly onLeave: () => Promise<void>;
}

/** Entries that are listed; the rest is counted. */
const mostShown = 12;

/** What another phone hands over, and what keeping it would change. */
export function HandingCard({ looked: { handed, handing, reportOf }, onLeave }: HandingCardProps) {
	const { model, state, toasts, now } = useAppState();
	const words = handWords();
	const [busy, setBusy] = useState(false);
	const [fault, setFault] = useState<string | null>(null);
	const { car, added, known, lacking, before, after, decided, calibrations, carIsNew } = handing;
	const nothingNew = added.length === 0 && calibrations.length === 0 && decided.every(({ took }) => took === "own");
	async function keep(): Promise<void> {
		setBusy(true);
		const taken = await model.take(handed);
		setBusy(false);
		if (taken && !taken.ok) setFault(codesWords().unchanged(await handedFaultWords(taken.error)));
		if (!taken?.ok) return;
		const { added, known } = taken.value;
		// A whole log in a file is a backup; codes leave nothing behind.
		if ("text" in handed)
			await noteOpened(model, car.id, { at: isoWithOffset(now()), entries: added + known, how: "opened" });
		await lookAtBackups(model, model, now());
		toasts.show(words.kept(added, car.name));
		await onLeave();
		location.hash = "#/tank";
	}
	async function leave(): Promise<void> {
		await onLeave();
		location.hash = !state.car ? "#/setup" : nothingNew ? "#/tank" : "#/take";
	}
	return (
		<>
			<section class="card">
				<h2>{words.previewTitle(car.name)}</h2>
				<p>
					<strong>{words.of(added.length + known, car.name, added.length)}</strong>
				</p>
				{reportOf !== null && (
					<p>
						{words.isReport(dateTime(reportOf))} <a href="#/reports">{words.toReports}</a>
					</p>
				)}
				{carIsNew && <p>{words.carIsNew}</p>}
				{lacking > 0 && <p class="fault">{words.lacks(lacking)}</p>}
				{handing.tooLong && <p>{words.unreckoned}</p>}
				<Entries handing={handing} unit={unitOf(state)} />
			</section>
			{after && <Effect before={before} after={after} />}
			{decided.length > 0 && <DecidedSettings handing={handing} unit={unitOf(state)} />}
			<section class="card">
				{nothingNew && <p>{words.notNew}</p>}
				{fault && (
					<p class="fault" role="alert">
						{fault}
					</p>
				)}
				{!nothingNew && (
					<button type="button" class="button main" disabled={busy} onClick={keep}>
						{words.keep}
					</button>
				)}
				<button type="button" class="button wide" disabled={busy} onClick={leave}>
					{nothingNew ? words.close : words.leave}
				</button>
			</section>
		</>
	);
}

interface PartProps {
	readonly handing: Handing;
	readonly unit: VolumeUnit;
}

function Entries({ handing: { car, added, calibrations }, unit }: PartProps) {
	const words = handWords();
	const lines = [...calibrations.map(({ name }) => ({ key: name, at: null, line: words.newCalibration(name) }))];
	const told = added
		.slice(0, mostShown)
		.map((event) => ({ key: event.id, at: event.at, line: lineOf(event, car, unit) }));
	return (
		<ul class="handed">
			{[...lines, ...told].map(({ key, at, line }) => (
				<li key={key}>
					{at !== null && (
						<span class="small soft">
							<time dateTime={at}>{dateTime(at)}</time>
						</span>
					)}
					<span>{line}</span>
				</li>
			))}
			{added.length > mostShown && <li class="soft">{words.more(added.length - mostShown)}</li>}
		</ul>
	);
}

function lineOf(event: LogEvent, car: Car, unit: VolumeUnit): string {
	if (isTankEvent(event)) return eventSentence(event, [], unit);
	const words = handWords();
	if (event.kind === "void") return words.takenBack;
	return words.flashed(car.calibrations.find(({ id }) => id === event.calibration)?.name ?? event.calibration);
}

function Effect({ before, after }: { readonly before: Standing | null; readonly after: Standing }) {
	const words = handWords();
	const { estimate, calibration } = after;
	const told = (was: string | null, is: string) =>
		was === null ? is : was === is ? words.stays(is) : words.from(was, is);
	const range = ({ low, high }: Standing["estimate"]) => percentRange(low, high);
	return (
		<section class="card">
			<DotPlot
				dots={estimate.dots}
				window={calibration?.window ?? null}
				calibratedFor={calibration?.calibratedFor ?? null}
				before={before?.estimate.dots}
			/>
			<Facts
				facts={[
					{ term: words.estimate, is: told(before && percent(before.estimate.median), percent(estimate.median)) },
					{ term: words.rangeNine, is: told(before && range(before.estimate), range(estimate)) },
				]}
			/>
		</section>
	);
}

function DecidedSettings({ handing: { decided }, unit }: PartProps) {
	const { model } = useApp();
	// As chosen on the fuel-system card.
	const { answer } = useAnswer(unitsKey, () => model.preference(unitsKey));
	const units = { volume: unit, fuelSystem: readUnits(answer, globalThis.navigator?.language) };
	const words = handWords();
	return (
		<section class="card">
			<h2>{words.decidedTitle}</h2>
			<ul class="handed">
				{decided.flatMap(({ field, own, other, took }) =>
					differingIn(field, own, other, units).map((each) => {
						const told = took === "own" ? words.decidedOwn : words.decidedOther;
						return <li key={`${field} ${each.name}`}>{told(each.name, each.own, each.other)}</li>;
					}),
				)}
			</ul>
			<p class="small soft">{words.decidedWhy}</p>
		</section>
	);
}
