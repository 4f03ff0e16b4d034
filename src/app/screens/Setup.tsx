import { useEffect, useState } from "preact/hooks";
import { catalogue } from "../../domain/catalogue";
import { unknownContents } from "../../domain/estimator/constants";
import { contentRange } from "../../domain/quantity";
import { useAppState } from "../app";
import { BackupOpener } from "../components/BackupOpener";
import { CalibrationFields } from "../components/CalibrationFields";
import { Choice, type Option } from "../components/Choice";
import { Form } from "../components/Form";
import { GaugeField } from "../components/GaugeField";
import { TankFields } from "../components/TankFields";
import { NumberField, TextField } from "../components/TextField";
import { localFuels } from "../localFuels";
import { type ContentsChoice, emptySetup, readNewCar, readSetup, type SetupFaults, type SetupForm } from "../setupForm";
import { cautions, productName, productRange } from "../text";
import { useDraft } from "../useDraft";

const draftKey = "setup";

/** The first car, or another one. "I don't know" is an answer to every question. */
export function SetupScreen() {
	const { model, state, toasts, now } = useAppState();
	const firstUnit = navigator.language === "en-US" ? "gal" : "L";
	const empty = () => emptySetup(model.newId(), firstUnit);
	const { draft: form, change, leave } = useDraft<SetupForm>(draftKey, (raw) => readSetup(raw, empty()), empty);
	const [refused, setRefused] = useState(false);
	const [busy, setBusy] = useState(false);
	useEffect(() => {
		// The first car is set up under any address; a car on disk must not pull the form away before it is done.
		if (location.hash !== "#/setup") location.replace("#/setup");
	}, []);
	if (!form) return <p class="soft late">Opening the form…</p>;

	const faults = refused ? faultsOf(form) : null;
	function save({ unit }: SetupForm, read: ReturnType<typeof readNewCar>): Promise<boolean> | null {
		setRefused(!read.ok);
		return read.ok ? adding(() => model.addCar(read.value.car, unit, read.value.events, draftKey)) : null;
	}
	async function lookAround(): Promise<void> {
		await adding(async () => {
			const { demoLog } = await import("../demo");
			const { car, events } = demoLog(now());
			return model.addCar(car, firstUnit, events);
		});
	}
	async function adding(work: () => Promise<boolean>): Promise<boolean> {
		setBusy(true);
		leave(true);
		const added = await work().catch(() => {
			toasts.show("A part of the app could not be loaded: reload it once there is a network.");
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
			<Form label="Set up a car" once onSave={() => save(form, readNewCar(form, model.newId, now()))}>
				<section class="card">
					<TextField
						label="Name of the car"
						hint="So that you know whose account you read. May stay empty."
						value={form.name}
						onInput={(name) => change({ ...form, name })}
					/>
				</section>
				<section class="card">
					<TankFields form={form} stored={null} fault={faults?.capacity} onChange={change} />
				</section>
				<section class="card">
					<ContentsFields form={form} faults={faults ?? {}} onChange={change} />
				</section>
				<section class="card">
					<GaugeField
						label="Fuel gauge now"
						hint="How much is in there says how far the next fill moves the blend."
						unknown="I don’t know"
						value={form.gauge}
						onChange={(gauge) => change({ ...form, gauge })}
					/>
				</section>
				<section class="card">
					<Choice
						label="Is there a calibration for a fixed blend?"
						hint="The warnings hold the tank against what it tolerates."
						options={calibrationChoices}
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
				{faults && (
					<p class="fault" role="alert">
						Something above needs mending; nothing is saved yet.
					</p>
				)}
				<button type="submit" class="button main">
					{busy ? "One moment…" : "Start the account"}
				</button>
			</Form>
			<details class="card">
				<summary>Cautions, in short</summary>
				<ul class="cautions">
					{cautions.map((caution) => (
						<li key={caution}>{firstSentence(caution)}</li>
					))}
				</ul>
			</details>
			<section class="card">
				<h2>Been here before?</h2>
				<BackupOpener label="I have a backup file" onOpened={() => location.replace("#/tank")} />
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
	return (
		<section class="card">
			<h2>{first ? "Which car, and what is in its tank?" : "Another car"}</h2>
			<p>
				Five questions, under a minute. “I don’t know” is a good answer: the account then begins wider and narrows with
				every fill. Nothing you type leaves this phone.
			</p>
			{first ? (
				<button type="button" class="button wide" disabled={busy} onClick={onLookAround}>
					Look around with an invented car first
				</button>
			) : (
				<a class="button wide" href="#/car">
					Back, without another car
				</a>
			)}
		</section>
	);
}

const calibrationChoices: readonly Option<"yes" | "no">[] = [
	{ value: "yes", label: "Yes, one is flashed" },
	{ value: "no", label: "I don’t know / none yet" },
];

/** The fuels that a car's first tank most likely holds, and every other answer. */
function contentsChoices(): readonly Option<ContentsChoice>[] {
	const { strong, gasolines } = localFuels();
	const fuels = [...gasolines, strong].flatMap((id) => catalogue.filter((entry) => entry.id === id));
	return [
		...fuels.map((fuel) => ({ value: fuel.id, label: productName(fuel), more: productRange(fuel) })),
		{ value: "limits", label: "Between two limits" },
		{ value: "measured", label: "Measured" },
		{
			value: "unknown",
			label: "I don’t know",
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
	return (
		<>
			<Choice
				label="What is in the tank now?"
				hint="The next fill mixes with it."
				options={contentsChoices()}
				value={form.contents}
				onChange={(contents) => onChange({ ...form, contents })}
			/>
			{form.contents === "limits" && (
				<div class="pair">
					<NumberField
						label="At least, %"
						value={form.low}
						fault={faults.low}
						onInput={(low) => onChange({ ...form, low })}
					/>
					<NumberField
						label="At most, %"
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
							label="Measured, %"
							value={form.measured}
							fault={faults.measured}
							onInput={(measured) => onChange({ ...form, measured })}
						/>
						<NumberField
							label="± points"
							value={form.measuredSd}
							fault={faults.measuredSd}
							onInput={(measuredSd) => onChange({ ...form, measuredSd })}
						/>
					</div>
					<p class="small soft">Two measurements in three are within these points of the truth.</p>
				</>
			)}
		</>
	);
}

function firstSentence(text: string): string {
	return /^.*?\.(?=\s|$)/.exec(text)?.[0] ?? text;
}
