import { lineDistanceKm, mixingMinutes } from "../../../domain/delay";
import { useAppState } from "../../app";
import { Choice, type Option } from "../../components/Choice";
import { distanceRange } from "../../format";
import { unitOf } from "../../model";
import { reportedWords } from "../../words/reported";
import { ReadingForm } from "./ReadingForm";
import { emptyReported, type ReportedForm, readReported, reportedScale, withSource } from "./reportedForm";
import { SdField } from "./SdField";
import { ShownField } from "./ShownField";
import { shownChoices } from "./shownChoices";

/** Where the car may know its ethanol content from. */
export function sources(): readonly Option<ReportedForm["source"]>[] {
	const { inferred, inferredMore, sensor } = reportedWords();
	return [
		{ value: "inferred", label: inferred, more: inferredMore },
		{ value: "sensor", label: sensor },
	];
}

const remember = ({ source, sd }: ReportedForm) => ({ [source]: sd });

/** What the engine computer itself believes. */
export function ReportedScreen() {
	const unit = unitOf(useAppState().state);
	const words = reportedWords();
	return (
		<ReadingForm
			kind="reported"
			title={words.title}
			about={words.about}
			steps={words.steps(...mixingMinutes, distanceRange(...lineDistanceKm, unit))}
			cautions={words.cautions}
			empty={emptyReported}
			read={readReported}
			remember={remember}
		>
			{({ form, faults, change, context }) => (
				<>
					<Choice
						label={words.shownAs}
						options={shownChoices()}
						value={form.shownAs}
						onChange={(shownAs) => change({ shownAs })}
					/>
					<ShownField
						label={words[form.shownAs]}
						hint={form.shownAs === "byte" ? words.byteHint : ""}
						typed={form.shown}
						as={form.shownAs}
						scale={reportedScale}
						fault={faults.shown}
						onInput={(shown) => change({ shown })}
					/>
					<Choice
						label={words.from}
						options={sources()}
						value={form.source}
						onChange={(source) => change(withSource(form, source, context.usual))}
					/>
					<SdField value={form.sd} fault={faults.sd} onInput={(sd) => change({ sd })} why={words.why[form.source]} />
				</>
			)}
		</ReadingForm>
	);
}
