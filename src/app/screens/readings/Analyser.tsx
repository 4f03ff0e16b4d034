import { mixingMinutes } from "../../../domain/delay";
import { NumberField } from "../../components/TextField";
import { type AnalyserForm, emptyAnalyser, readAnalyser } from "./analyserForm";
import { ReadingForm } from "./ReadingForm";
import { SdField } from "./SdField";

const remember = ({ sd }: AnalyserForm) => ({ analyser: sd });

/** An ethanol analyser, or the gauge of a sensor in the fuel line. */
export function AnalyserScreen() {
	return (
		<ReadingForm
			kind="analyser"
			title="Ethanol analyser or sensor gauge"
			about="It measures how well the fuel conducts and stores charge. Water or methanol in it shifts the reading."
			steps={[
				`After a fill drive ${mixingMinutes.join(" to ")}\u00a0minutes, so that the tank is mixed and the lines hold its fuel.`,
				"Do as its maker says; warming up and rinsing come before the reading.",
				"Wait until the figure stands still.",
			]}
			cautions={[
				"Fuel in the lines is under pressure: taking it from there is a workshop’s job, unless the car’s maker gives a procedure.",
				"Fuel vapour burns and is harmful: work outdoors, with gloves and goggles, and with nothing hot or sparking near.",
			]}
			empty={emptyAnalyser}
			read={readAnalyser}
			remember={remember}
		>
			{({ form, faults, change }) => (
				<>
					<NumberField
						label="It shows, % ethanol"
						value={form.percent}
						fault={faults.percent}
						onInput={(percent) => change({ percent })}
					/>
					<SdField
						value={form.sd}
						fault={faults.sd}
						onInput={(sd) => change({ sd })}
						why="2.5 is common practice; if its maker states an accuracy, type that."
					/>
				</>
			)}
		</ReadingForm>
	);
}
