import { lineDistanceKm, mixingMinutes } from "../../../domain/delay";
import { impliedContent, unevenBanks, usualTrimLimit } from "../../../domain/readings/trims";
import { useAppState } from "../../app";
import { flashedNow } from "../../calibrations";
import { Choice, type Option } from "../../components/Choice";
import { NumberField } from "../../components/TextField";
import { distanceRange, percent, points } from "../../format";
import { unitOf } from "../../model";
import { typedPercent } from "../../numberWords";
import type { ReadingContext } from "../../readingDraft";
import { signedPercent } from "../../shownByte";
import { type Fields, ReadingForm } from "./ReadingForm";
import { SdField } from "./SdField";
import { ShownField } from "./ShownField";
import { shownChoices } from "./shownChoices";
import { emptyTrim, readTrimReading, readTrims, type TrimForm, trimFields, trimScales, withFlashed } from "./trimForm";

const banks: readonly Option<TrimForm["banks"]>[] = [
	{ value: "1", label: "One bank", more: "engines in line" },
	{ value: "2", label: "Two banks", more: "V and flat engines" },
];

const labels = {
	short1: "Short term, bank 1",
	long1: "Long term, bank 1",
	short2: "Short term, bank 2",
	long2: "Long term, bank 2",
} as const;

const empty = (context: ReadingContext) => emptyTrim(context, flashedContent(context, null));

const follow = (form: TrimForm, context: ReadingContext, at: string | null) =>
	withFlashed(form, flashedContent(context, at));

/** What the calibration is made for that was flashed then, percent; null: now. */
function flashedContent({ car, events }: ReadingContext, at: string | null): string {
	const until = at === null ? Infinity : Date.parse(at);
	const flashed = flashedNow(
		car,
		events.filter((event) => event.kind !== "calibration" || Date.parse(event.at) <= until),
	);
	return flashed ? typedPercent(flashed.calibratedFor) : "";
}

const remember = ({ sd }: TrimForm) => ({ trim: sd });

/** What the engine corrects its injection by. */
export function TrimScreen() {
	const unit = unitOf(useAppState().state);
	return (
		<ReadingForm
			kind="trim"
			title="Fuel trims"
			about="In closed loop the engine adds fuel where there is more ethanol than it is calibrated for. But trims are often off by 3 % for other reasons, and that looks like 8 points of ethanol: this is a check of plausibility, until trims on known blends have taught what this car is off by itself."
			steps={[
				`After a fill drive ${mixingMinutes.join(" to ")}\u00a0minutes and some ${distanceRange(...lineDistanceKm, unit)}, until the long-term trim stands still.`,
				"Engine warm, in closed loop, at a steady cruise on a level road, out of boost.",
				"Let a passenger note short-term and long-term trim of each bank, as means over some ten seconds.",
				"Type them with their signs.",
			]}
			cautions={[
				"The driver watches the road, not the tool.",
				"Trims that look right do not make full load safe: many engines do not carry them there (13 of 25 cars screened, CRC E-87-1).",
			]}
			empty={empty}
			follow={follow}
			read={readTrimReading}
			remember={remember}
		>
			{(fields) => <TrimFields {...fields} />}
		</ReadingForm>
	);
}

function TrimFields({ form, faults, change }: Fields<TrimForm>) {
	const asked = trimFields.slice(0, form.banks === "1" ? 2 : 4);
	return (
		<>
			<Choice label="Banks of cylinders" options={banks} value={form.banks} onChange={(banks) => change({ banks })} />
			<Choice
				label="They are shown as"
				options={shownChoices}
				value={form.shownAs}
				onChange={(shownAs) => change({ shownAs })}
			/>
			{asked.map((field) => (
				<ShownField
					key={field}
					label={`${labels[field]}, ${form.shownAs === "percent" ? "%" : "raw byte"}`}
					typed={form[field]}
					as={form.shownAs}
					scale={trimScales[field]}
					fault={faults[field]}
					onInput={(typed) => change({ [field]: typed })}
					signed
				/>
			))}
			<Understood form={form} />
			<NumberField
				label="Calibrated for, % ethanol"
				hint="Of the calibration that is flashed when you measure."
				value={form.calibratedFor}
				fault={faults.calibratedFor}
				onInput={(calibratedFor) => change({ calibratedFor })}
			/>
			<SdField
				label="Give or take, % of trim"
				value={form.sd}
				fault={faults.sd}
				onInput={(sd) => change({ sd })}
				why="3 is common practice. Most of it is this car’s own and the same every time: trims on a known blend teach it, and later ones then count for more."
			/>
		</>
	);
}

/** The trims as one, what they alone would say, and what is odd about them. */
function Understood({ form }: { readonly form: TrimForm }) {
	const read = readTrims(form);
	if (!read.ok) return null;
	const { trim, sd, spread, calibratedFor, longTerms } = read.value;
	const implied = impliedContent(trim, sd, calibratedFor);
	return (
		<div class="stack" aria-live="polite">
			<p>
				Together <strong class="nowrap">{signedPercent(trim)}</strong>
				{form.banks === "2" && ", the mean of both banks"}.{" "}
				{implied.ok
					? `On its own that would be ${percent(implied.value.content)} ethanol, give or take ${points(implied.value.sd)}\u00a0points.`
					: `No blend explains that: it lies ${implied.error} what any content would bring. Look for another cause.`}
			</p>
			{spread > unevenBanks && (
				<p class="fault">
					The banks differ by {percent(spread)}: fuel is the same for both, so this points to a leak or a sensor (common
					practice). Find that first.
				</p>
			)}
			{longTerms.some((trim) => Math.abs(trim) >= usualTrimLimit - 0.01) && (
				<p class="fault">
					A long-term trim this large is where most engine computers stop correcting: the truth may lie further out.
				</p>
			)}
		</div>
	);
}
