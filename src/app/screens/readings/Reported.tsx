import { lineDistanceKm, mixingMinutes } from "../../../domain/delay";
import { useAppState } from "../../app";
import { Choice, type Option } from "../../components/Choice";
import { distanceRange } from "../../format";
import { unitOf } from "../../model";
import { ReadingForm } from "./ReadingForm";
import { emptyReported, type ReportedForm, readReported, reportedScale, withSource } from "./reportedForm";
import { SdField } from "./SdField";
import { ShownField } from "./ShownField";
import { shownChoices } from "./shownChoices";

export const sources: readonly Option<ReportedForm["source"]>[] = [
	{ value: "inferred", label: "From the fuel trims, or not known", more: "usual without a sensor" },
	{ value: "sensor", label: "From a sensor in the fuel line" },
];

const remember = ({ source, sd }: ReportedForm) => ({ [source]: sd });

/** What the engine computer itself believes. */
export function ReportedScreen() {
	const unit = unitOf(useAppState().state);
	return (
		<ReadingForm
			kind="reported"
			title="The car’s own report"
			about="Some engine computers tell the ethanol content they reckon with: service 01, PID 52 of SAE J1979. The standard fixes how it is coded, not how true it is."
			steps={[
				"Plug a scan tool into the diagnostic socket and start the engine.",
				`After a fill drive ${mixingMinutes.join(" to ")}\u00a0minutes and some ${distanceRange(...lineDistanceKm, unit)} first.`,
				"Among the live data find “alcohol fuel percentage” or “ethanol fuel %”.",
				"Type what it shows.",
			]}
			cautions={[
				"Read it standing still, or let a passenger read it.",
				"A figure that never changes from fill to fill is not measured: leave it out.",
			]}
			empty={emptyReported}
			read={readReported}
			remember={remember}
		>
			{({ form, faults, change, context }) => (
				<>
					<Choice
						label="It is shown as"
						options={shownChoices}
						value={form.shownAs}
						onChange={(shownAs) => change({ shownAs })}
					/>
					<ShownField
						label={form.shownAs === "percent" ? "Shown, % ethanol" : "Shown, raw byte"}
						hint={
							form.shownAs === "byte"
								? "Such as 4D, 0x4D or 77; or the whole response, such as 41\u00a052\u00a04D."
								: ""
						}
						typed={form.shown}
						as={form.shownAs}
						scale={reportedScale}
						fault={faults.shown}
						onInput={(shown) => change({ shown })}
					/>
					<Choice
						label="Where does the car know it from?"
						options={sources}
						value={form.source}
						onChange={(source) => change(withSource(form, source, context.usual))}
					/>
					<SdField
						value={form.sd}
						fault={faults.sd}
						onInput={(sd) => change({ sd })}
						why={
							form.source === "sensor"
								? "3 for a sensor that is good to 5 points either way."
								: "8, as a trim that is off by 3 % puts it off by about that."
						}
					/>
				</>
			)}
		</ReadingForm>
	);
}
