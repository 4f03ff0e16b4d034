import { lineDistanceKm, mixingMinutes } from "../../../domain/delay";
import { impliedContent, unevenBanks, usualTrimLimit } from "../../../domain/readings/trims";
import { useAppState } from "../../app";
import { flashedNow } from "../../calibrations";
import { Choice, type Option } from "../../components/Choice";
import { Emphasised } from "../../components/Emphasised";
import { NumberField } from "../../components/TextField";
import { distanceRange, percent, points } from "../../format";
import { unitOf } from "../../model";
import { typedPercent } from "../../numberWords";
import type { ReadingContext } from "../../readingDraft";
import { signedPercent } from "../../shownByte";
import { figuresWords } from "../../words/figures";
import { trimsWords } from "../../words/trims";
import { type Fields, ReadingForm } from "./ReadingForm";
import { SdField } from "./SdField";
import { ShownField } from "./ShownField";
import { shownChoices } from "./shownChoices";
import { emptyTrim, readTrimReading, readTrims, type TrimForm, trimFields, trimScales, withFlashed } from "./trimForm";

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
	const words = trimsWords();
	return (
		<ReadingForm
			kind="trim"
			title={words.title}
			about={words.about}
			steps={words.steps(...mixingMinutes, distanceRange(...lineDistanceKm, unit))}
			cautions={words.cautions}
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
	const words = trimsWords();
	const asked = trimFields.slice(0, form.banks === "1" ? 2 : 4);
	const banks: readonly Option<TrimForm["banks"]>[] = [
		{ value: "1", label: words.oneBank, more: words.oneBankMore },
		{ value: "2", label: words.twoBanks, more: words.twoBanksMore },
	];
	return (
		<>
			<Choice label={words.banks} options={banks} value={form.banks} onChange={(banks) => change({ banks })} />
			<Choice
				label={words.shownAs}
				options={shownChoices()}
				value={form.shownAs}
				onChange={(shownAs) => change({ shownAs })}
			/>
			{asked.map((field) => (
				<ShownField
					key={field}
					label={`${words.fields[field]}, ${form.shownAs === "percent" ? "%" : figuresWords().rawByte}`}
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
				label={words.calibratedFor}
				hint={words.calibratedForHint}
				value={form.calibratedFor}
				fault={faults.calibratedFor}
				onInput={(calibratedFor) => change({ calibratedFor })}
			/>
			<SdField label={words.sd} value={form.sd} fault={faults.sd} onInput={(sd) => change({ sd })} why={words.why} />
		</>
	);
}

/** The trims as one, what they alone would say, and what is odd about them. */
function Understood({ form }: { readonly form: TrimForm }) {
	const read = readTrims(form);
	if (!read.ok) return null;
	const { trim, sd, spread, calibratedFor, longTerms } = read.value;
	const implied = impliedContent(trim, sd, calibratedFor);
	const words = trimsWords();
	const explained = implied.ok
		? words.implied(percent(implied.value.content), points(implied.value.sd))
		: words.unexplained(implied.error);
	return (
		<div class="stack" aria-live="polite">
			<p>
				<Emphasised text={words.together(signedPercent(trim), form.banks === "2" ? 2 : 1)} /> {explained}
			</p>
			{spread > unevenBanks && <p class="fault">{figuresWords().uneven(percent(spread))}</p>}
			{longTerms.some((trim) => Math.abs(trim) >= usualTrimLimit - 0.01) && <p class="fault">{words.atLimit}</p>}
		</div>
	);
}
