import { GaugeField } from "../../components/GaugeField";
import { OdometerField } from "../../components/OdometerField";
import { lastOdometer } from "../../fillChoices";
import { emptyGauge, type GaugeForm, readGauge } from "./gaugeForm";
import { type Fields, ReadingForm } from "./ReadingForm";

const remember = () => ({});

/** A look at the gauge without a fill. */
export function GaugeScreen() {
	return (
		<ReadingForm
			kind="gauge"
			title="A look at the gauge"
			about="Burning fuel does not change the blend. But what is left in the tank decides how far the next fill moves it."
			steps={["Stand on level ground, ignition on.", "Wait until the needle stands still."]}
			cautions={[]}
			empty={emptyGauge}
			read={readGauge}
			remember={remember}
		>
			{(fields) => <GaugeFields {...fields} />}
		</ReadingForm>
	);
}

function GaugeFields({ form, faults, change, context }: Fields<GaugeForm>) {
	return (
		<>
			<GaugeField
				label="Fuel gauge"
				unknown="Not looked yet"
				value={form.gauge}
				onChange={(gauge) => change({ gauge })}
			/>
			{faults.gauge && (
				<p class="fault" role="alert" tabIndex={-1}>
					{faults.gauge}
				</p>
			)}
			<OdometerField
				typed={form.odometer}
				last={lastOdometer(context.events, Infinity, [])}
				unit={form.unit}
				onInput={(odometer) => change({ odometer })}
			/>
		</>
	);
}
