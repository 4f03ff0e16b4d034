import { useEffect, useState } from "preact/hooks";
import { catalogue } from "../../domain/catalogue";
import { unknownContents } from "../../domain/estimator/constants";
import { contentRange } from "../../domain/quantity";
import { useAppState } from "../app";
import { BackupOpener } from "../components/BackupOpener";
import { CalibrationFields } from "../components/CalibrationFields";
import { CardInSetup } from "../components/CardInSetup";
import { Choice, type Option } from "../components/Choice";
import { Form } from "../components/Form";
import { GaugeField } from "../components/GaugeField";
import { TankFields } from "../components/TankFields";
import { NumberField, TextField } from "../components/TextField";
import { localFuels } from "../localFuels";
import {
	type ContentsChoice,
	emptySetup,
	readNewCar,
	readSetup,
	type SetupFaults,
	type SetupForm,
	withContents,
} from "../setupForm";
import { productName, productRange } from "../text";
import { useDraft } from "../useDraft";
import { useTurns } from "../useTurns";
import { cardWords } from "../words/card";
import { cautionsWords } from "../words/cautions";
import { wordsReady } from "../words/language";
import { setupWords } from "../words/setup";

const draftKey = "setup";

/** The first car, or another one. "I don't know" is an answer to every question. */
export function SetupScreen() {
	const { model, state, toasts, now } = useAppState();
	const firstUnit = navigator.language === "en-US" ? "gal" : "L";
	const empty = () => emptySetup(model.newId(), firstUnit);
	const { draft: form, change, leave } = useDraft<SetupForm>(draftKey, (raw) => readSetup(raw, empty()), empty);
	const [refused, setRefused] = useState(false);
	const [busy, setBusy] = useState(false);
	const turn = useTurns(form ? 5 : 1);
	useEffect(() => {
		// The first car is set up under any address; a car on disk must not pull the form away before it is done.
		if (location.hash !== "#/setup") location.replace("#/setup");
	}, []);
	const words = setupWords();
	if (!form) return <p class="soft late">{words.opening}</p>;

	const faults = refused ? faultsOf(form) : null;
	function save({ unit }: SetupForm, read: ReturnType<typeof readNewCar>): Promise<boolean> | null {
		setRefused(!read.ok);
		return read.ok ? adding(() => model.addCar(read.value.car, unit, read.value.events, draftKey)) : null;
	}
	async function lookAround(): Promise<void> {
		await adding(async () => {
			const { demoLog } = await import("../demo");
			await wordsReady();
			const { car, events } = demoLog(now());
			return model.addCar(car, firstUnit, events);
		});
	}
	async function adding(work: () => Promise<boolean>): Promise<boolean> {
		setBusy(true);
		leave(true);
		const added = await work().catch(() => {
			toasts.show(words.partMissing);
			return false;
		});
		leave(added);
		setBusy(added);
		if (added) location.replace("#/tank");
		return added;
	}

	return (
		<>
			<Welcome first={state.cars.length === 0} busy={busy} onLookAround={lookAround} />
			<Form label={words.form} once onSave={() => save(form, readNewCar(form, model.newId, now()))}>
				<section class="card">
					<TextField
						label={words.name}
						hint={words.nameHint}
						value={form.name}
						onInput={(name) => change({ ...form, name })}
					/>
				</section>
				{turn >= 2 && (
					<section class="card">
						<TankFields form={form} stored={null} fault={faults?.capacity} onChange={change} />
					</section>
				)}
				{turn >= 3 && (
					<section class="card">
						<ContentsFields form={form} faults={faults ?? {}} onChange={change} />
					</section>
				)}
				{turn >= 4 && (
					<section class="card">
						<GaugeField
							label={words.gauge}
							hint={words.gaugeHint}
							unknown={words.unknown}
							value={form.gauge}
							onChange={(gauge) => change({ ...form, gauge })}
						/>
					</section>
				)}
				{turn >= 5 &&
					(form.card ? (
						<CardInSetup card={form.card} onWithout={() => change({ ...form, card: undefined })} />
					) : (
						<section class="card">
							<Choice
								label={words.calibration}
								hint={words.calibrationHint}
								options={[
									{ value: "yes", label: words.calibrationYes },
									{ value: "no", label: words.calibrationNo },
								]}
								value={form.hasCalibration}
								onChange={(hasCalibration) => change({ ...form, hasCalibration })}
							/>
							{form.hasCalibration === "yes" && (
								<CalibrationFields
									form={form.calibration}
									faults={faults?.calibration ?? {}}
									onChange={(calibration) => change({ ...form, calibration })}
								/>
							)}
						</section>
					))}
				{faults && (
					<p class="fault" role="alert">
						{words.mend}
					</p>
				)}
				{turn >= 5 && (
					<button type="submit" class="button main">
						{busy ? words.busy : words.start}
					</button>
				)}
			</Form>
			{turn >= 5 && <Rest />}
		</>
	);
}

/** The usual cautions, and what leads to an account without the form: a backup, a code, the reports of others. */
function Rest() {
	const words = setupWords();
	return (
		<>
			<details class="card">
				<summary>{words.cautions}</summary>
				<ul class="cautions">
					{cautionsWords().usual.map((caution) => (
						<li key={caution}>{firstSentence(caution)}</li>
					))}
				</ul>
			</details>
			<section class="card">
				<h2>{words.hereBefore}</h2>
				<BackupOpener label={words.backup} onOpened={() => location.replace("#/tank")} />
				<a class="button wide" href="#/take">
					{cardWords().haveCode}
				</a>
				<a class="button wide" href="#/card">
					{cardWords().forTuners}
				</a>
				<a class="button wide" href="#/reports">
					{words.reports}
				</a>
			</section>
		</>
	);
}

function faultsOf(form: SetupForm): SetupFaults | null {
	const read = readNewCar(form, () => "", 0);
	return read.ok ? null : read.error;
}

interface WelcomeProps {
	readonly first: boolean;
	readonly busy: boolean;
	readonly onLookAround: () => void;
}

function Welcome({ first, busy, onLookAround }: WelcomeProps) {
	const words = setupWords();
	return (
		<section class="card">
			<h2>{first ? words.first : words.another}</h2>
			<p>{words.welcome}</p>
			{first ? (
				<button type="button" class="button wide" disabled={busy} onClick={onLookAround}>
					{words.lookAround}
				</button>
			) : (
				<a class="button wide" href="#/car">
					{words.back}
				</a>
			)}
		</section>
	);
}

/** The fuels that a car's first tank most likely holds, and every other answer. */
function contentsChoices(): readonly Option<ContentsChoice>[] {
	const { strong, gasolines } = localFuels();
	const words = setupWords();
	const fuels = [...gasolines, strong].flatMap((id) => catalogue.filter((entry) => entry.id === id));
	return [
		...fuels.map((fuel) => ({ value: fuel.id, label: productName(fuel), more: productRange(fuel) })),
		{ value: "limits", label: words.limits },
		{ value: "measured", label: words.measuredWay },
		{
			value: "unknown",
			label: words.unknown,
			more: productRange({ id: "", range: contentRange(...unknownContents) }),
		},
	];
}

interface ContentsFieldsProps {
	readonly form: SetupForm;
	readonly faults: SetupFaults;
	readonly onChange: (form: SetupForm) => void;
}

function ContentsFields({ form, faults, onChange }: ContentsFieldsProps) {
	const words = setupWords();
	return (
		<>
			<Choice
				label={words.contents}
				hint={words.contentsHint}
				options={contentsChoices()}
				value={form.contents}
				onChange={(contents) => onChange(withContents(form, contents))}
			/>
			{form.contents === "limits" && (
				<div class="pair">
					<NumberField
						label={words.low}
						value={form.low}
						fault={faults.low}
						onInput={(low) => onChange({ ...form, low })}
					/>
					<NumberField
						label={words.high}
						value={form.high}
						fault={faults.high}
						onInput={(high) => onChange({ ...form, high })}
					/>
				</div>
			)}
			{form.contents === "measured" && (
				<>
					<div class="pair">
						<NumberField
							label={words.measured}
							value={form.measured}
							fault={faults.measured}
							onInput={(measured) => onChange({ ...form, measured })}
						/>
						<NumberField
							label={words.sd}
							value={form.measuredSd}
							fault={faults.measuredSd}
							onInput={(measuredSd) => onChange({ ...form, measuredSd })}
						/>
					</div>
					<p class="small soft">{words.sdHint}</p>
				</>
			)}
		</>
	);
}

function firstSentence(text: string): string {
	return /^.*?\.(?=\s|$)/.exec(text)?.[0] ?? text;
}
