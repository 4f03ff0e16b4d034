import { strongLayer } from "../../../domain/readings/waterTube";
import { Choice, type Option } from "../../components/Choice";
import { PumpSampleFields } from "../../components/PumpSampleFields";
import { NumberField } from "../../components/TextField";
import { placesIn, usualProduct } from "../../fillChoices";
import { exactPercent, percent } from "../../format";
import type { ReadingContext } from "../../readingDraft";
import { type Fields, ReadingForm } from "./ReadingForm";
import { emptyTube, readTube, readTubeReading, type TubeForm } from "./tubeForm";

const sources: readonly Option<TubeForm["of"]>[] = [
	{ value: "tank", label: "The tank" },
	{ value: "pump", label: "A pump", more: "a sample from its nozzle" },
];

function empty(context: ReadingContext): TubeForm {
	const { events } = context;
	return emptyTube(context, placesIn(events)[0] ?? null, usualProduct(events));
}

const remember = ({ readTo, own }: TubeForm) => ({ cylinder: readTo, method: own });

/** Water draws the ethanol out of the fuel, and its layer grows. */
export function WaterTubeScreen() {
	return (
		<ReadingForm
			kind="tube"
			title="Water test"
			about="Water draws the ethanol out of the fuel, and the lower layer grows. Both shrink as they mix; that is corrected for."
			steps={[
				"Have a narrow graduated cylinder that closes, of glass or of plastic that fuel does not attack, and water.",
				"From a pump: let the hose’s old fuel run into the tank first, then take the sample in an approved can.",
				"Fill in fuel, 50\u00a0mL say, and read it at eye level, at the bottom of its curve.",
				"Add as much water again. With little water a strong fuel reads high.",
				"Close it, shake for 15\u00a0seconds, open it slowly to let the pressure out, and shake once more.",
				"Let it stand upright for five minutes, until the line between the layers is sharp.",
				"Read the lower layer: where the two liquids meet.",
			]}
			cautions={[
				"Outdoors, nothing hot, burning or sparking near, no smoking: vapour lights far from the sample.",
				"Goggles, and gloves that fuel does not go through. Do not breathe the vapour; wash off what gets on the skin.",
				"A sample from the tank: fuel in the lines is under pressure. Leave that to a workshop, unless the car’s maker gives a procedure.",
				"The sample is hazardous waste, water and all: keep it in a closed, marked can and hand it in where waste fuel is taken. Never pour it back into the tank, down a drain or on the ground.",
			]}
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
	return (
		<>
			<Choice label="The sample is from" options={sources} value={form.of} onChange={(of) => change({ of })} />
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
				<NumberField label="Fuel, mL" value={form.fuel} fault={faults.fuel} onInput={(fuel) => change({ fuel })} />
				<NumberField label="Water, mL" value={form.water} fault={faults.water} onInput={(water) => change({ water })} />
			</div>
			<NumberField
				label="Lower layer after settling, mL"
				hint="All of it, the water included."
				value={form.layer}
				fault={faults.layer}
				onInput={(layer) => change({ layer })}
			/>
			<Understood form={form} />
			<NumberField
				label="Each is read to within, mL"
				hint="Half the step between two marks."
				value={form.readTo}
				fault={faults.readTo}
				onInput={(readTo) => change({ readTo })}
			/>
			<NumberField
				label="Give or take of the method, points"
				hint={
					"For ethanol left in the fuel and gasoline in the water. Empty: 2 up to 40 % ethanol, 4 above (common practice)."
				}
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
	return (
		<div class="stack" aria-live="polite">
			<p>
				<strong class="nowrap">{exactPercent(content)}</strong> ethanol, give or take{" "}
				{exactPercent(sd).replace("%", "points")}. Without the correction it would read {exactPercent(uncorrected)}.
			</p>
			{layerStrength > strongLayer && (
				<p class="fault">
					The lower layer would be {percent(layerStrength)} ethanol: so strong a layer takes up gasoline and reads high.
					Repeat it with as much water as fuel.
				</p>
			)}
		</div>
	);
}
