import { mixingMinutes } from "../../../domain/delay";
import { NumberField } from "../../components/TextField";
import { analyserWords } from "../../words/analyser";
import { type AnalyserForm, emptyAnalyser, readAnalyser } from "./analyserForm";
import { ReadingForm } from "./ReadingForm";
import { SdField } from "./SdField";

const remember = ({ sd }: AnalyserForm) => ({ analyser: sd });

/** An ethanol analyser, or the gauge of a sensor in the fuel line. */
export function AnalyserScreen() {
	const { title, about, steps, cautions, shows, why } = analyserWords();
	return (
		<ReadingForm
			kind="analyser"
			title={title}
			about={about}
			steps={steps(...mixingMinutes)}
			cautions={cautions}
			empty={emptyAnalyser}
			read={readAnalyser}
			remember={remember}
		>
			{({ form, faults, change }) => (
				<>
					<NumberField
						label={shows}
						value={form.percent}
						fault={faults.percent}
						onInput={(percent) => change({ percent })}
					/>
					<SdField value={form.sd} fault={faults.sd} onInput={(sd) => change({ sd })} why={why} />
				</>
			)}
		</ReadingForm>
	);
}
