import { GaugeField } from "../../components/GaugeField";
import { OdometerField } from "../../components/OdometerField";
import { lastOdometer } from "../../fillChoices";
import { gaugeLookWords } from "../../words/gaugeLook";
import { emptyGauge, type GaugeForm, readGauge } from "./gaugeForm";
import { type Fields, ReadingForm } from "./ReadingForm";

const remember = () => ({});

/** A look at the gauge without a fill. */
export function GaugeScreen() {
	const { title, about, steps } = gaugeLookWords();
	return (
		<ReadingForm
			kind="gauge"
			title={title}
			about={about}
			steps={steps}
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
	const { gauge, unknown } = gaugeLookWords();
	return (
		<>
			<GaugeField label={gauge} unknown={unknown} value={form.gauge} onChange={(gauge) => change({ gauge })} />
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
