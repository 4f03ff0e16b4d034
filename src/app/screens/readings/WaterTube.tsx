import { strongLayer } from "../../../domain/readings/waterTube";
import { Choice, type Option } from "../../components/Choice";
import { Emphasised } from "../../components/Emphasised";
import { PumpSampleFields } from "../../components/PumpSampleFields";
import { NumberField } from "../../components/TextField";
import { placesIn, usualProduct } from "../../fillChoices";
import { exactPercent, percent } from "../../format";
import type { ReadingContext } from "../../readingDraft";
import { typedNumber } from "../../typedNumber";
import { waterTubeWords } from "../../words/waterTube";
import { type Fields, ReadingForm } from "./ReadingForm";
import { emptyTube, readTube, readTubeReading, type TubeForm } from "./tubeForm";

function empty(context: ReadingContext): TubeForm {
	const { events } = context;
	return emptyTube(context, placesIn(events)[0] ?? null, usualProduct(events));
}

const remember = ({ readTo, own }: TubeForm) => ({ cylinder: readTo, method: own });

/** Water draws the ethanol out of the fuel, and its layer grows. */
export function WaterTubeScreen() {
	const { title, about, steps, cautions } = waterTubeWords();
	return (
		<ReadingForm
			kind="tube"
			title={title}
			about={about}
			steps={steps}
			cautions={cautions}
			empty={empty}
			read={readTubeReading}
			remember={remember}
		>
			{(fields) => <TubeFields {...fields} />}
		</ReadingForm>
	);
}

function TubeFields({ form, faults, change, context }: Fields<TubeForm>) {
	const { events } = context;
	const words = waterTubeWords();
	const sources: readonly Option<TubeForm["of"]>[] = [
		{ value: "tank", label: words.tank },
		{ value: "pump", label: words.pump, more: words.pumpMore },
	];
	return (
		<>
			<Choice label={words.source} options={sources} value={form.of} onChange={(of) => change({ of })} />
			{form.of === "pump" && (
				<PumpSampleFields
					events={events}
					place={form.place}
					product={form.product}
					fault={faults.place}
					onChange={change}
				/>
			)}
			<div class="volumes">
				<NumberField label={words.fuel} value={form.fuel} fault={faults.fuel} onInput={(fuel) => change({ fuel })} />
				<NumberField
					label={words.water}
					value={form.water}
					fault={faults.water}
					onInput={(water) => change({ water })}
				/>
			</div>
			<NumberField
				label={words.layer}
				hint={words.layerHint}
				value={form.layer}
				fault={faults.layer}
				onInput={(layer) => change({ layer })}
			/>
			<Understood form={form} />
			<NumberField
				label={words.readTo}
				hint={words.readToHint}
				value={form.readTo}
				fault={faults.readTo}
				onInput={(readTo) => change({ readTo })}
			/>
			<NumberField
				label={words.own}
				hint={words.ownHint}
				value={form.own}
				fault={faults.own}
				onInput={(own) => change({ own })}
			/>
		</>
	);
}

/** What the cylinder says, and what is odd about it. */
function Understood({ form }: { readonly form: TubeForm }) {
	const tube = readTube(form);
	if (!tube.ok) return null;
	const { content, sd, uncorrected, layerStrength } = tube.value;
	const words = waterTubeWords();
	const points = typedNumber(Math.round(sd * 1000) / 10);
	return (
		<div class="stack" aria-live="polite">
			<p>
				<Emphasised text={words.understood(exactPercent(content), points, exactPercent(uncorrected))} />
			</p>
			{layerStrength > strongLayer && <p class="fault">{words.strongLayer(percent(layerStrength))}</p>}
		</div>
	);
}
