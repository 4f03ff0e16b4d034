import type { Finding } from "../../../domain/datalog/finding";
import { type Reason, reasons } from "../../../domain/datalog/steady";
import type { TrimFound } from "../../../domain/datalog/trimReading";
import { impliedContent, unevenBanks, usualTrimLimit } from "../../../domain/readings/trims";
import type { Calibration } from "../../../domain/vehicle";
import { useAppState } from "../../app";
import { Facts } from "../../components/Facts";
import { adviceWords, durationWords, reasonWords } from "../../dataLogWords";
import { exactPercent, percent, points } from "../../format";
import { unitOf } from "../../model";
import { signedPercent } from "../../shownByte";
import { StretchTable } from "./StretchTable";
import { TrimChart } from "./TrimChart";

interface SteadyCardProps {
	readonly finding: Finding;
	/** In force when the log was recorded. */
	readonly calibration: Calibration | null;
	/** Whether the picture is there yet. */
	readonly drawn: boolean;
}

/** The fuel trim of steady driving: the picture, the value, and what it would mean by itself. */
export function SteadyCard({ finding: { steady, columns }, calibration, drawn }: SteadyCardProps) {
	if (!steady) {
		return (
			<section class="card" aria-label="Fuel trim of steady driving">
				<h2>Fuel trim of steady driving</h2>
				<p>The log has no fuel trims, or not the short-term and the long-term one of the same bank.</p>
			</section>
		);
	}
	const { found, stretches, left } = steady;
	const has = (role: string) => columns.some((column) => column.role === role);
	return (
		<section class="card" aria-label="Fuel trim of steady driving">
			<h2>Fuel trim of steady driving</h2>
			{found ? (
				<p class="lead">
					<strong class="nowrap">{signedPercent(found.value)}</strong> fuel, give or take{" "}
					<span class="nowrap">{exactPercent(found.sd)}</span>
				</p>
			) : (
				<Nothing left={left} />
			)}
			{drawn && <TrimChart steady={steady} />}
			{found && <Found found={found} stretches={stretches.length} />}
			{found && calibration && <Implied found={found} calibration={calibration} />}
			{!has("coolant") && (
				<p class="small">Coolant is not in the log: that the engine was warm is taken for granted. Was it?</p>
			)}
			{!has("speed") && !has("rpm") && (
				<p class="small">
					Neither vehicle nor engine speed is in the log: idle could not be told from driving, and its trims differ.
				</p>
			)}
			{found && <Doubt found={found} />}
			{stretches.length > 0 && <StretchTable stretches={stretches} />}
			<LeftOut left={left} />
		</section>
	);
}

function Nothing({ left }: { readonly left: Readonly<Record<Reason, number>> }) {
	// What comes last in the order was nearest to a reading, if there was enough of it.
	const nearest = [...reasons].reverse().find((reason) => left[reason] >= 10) ?? "tooShort";
	return (
		<p class="fault">
			No stretch of this log is warm, in closed loop and steady for long enough. {adviceWords[nearest]}
		</p>
	);
}

function Found({ found, stretches }: { readonly found: TrimFound; readonly stretches: number }) {
	const { banksApart, seconds } = found;
	return (
		<>
			<Facts
				facts={[
					{
						term: "Steady for",
						is: `${durationWords(seconds)} in ${stretches} ${stretches === 1 ? "stretch" : "stretches"}`,
					},
					...(banksApart.length > 1 ? [{ term: "Bank 1 and 2", is: banksApart.map(signedPercent).join(" and ") }] : []),
				]}
			/>
			{banksApart.length > 1 && Math.abs(banksApart[0] - banksApart[1]) > unevenBanks && (
				<p class="fault">
					The banks differ by {percent(Math.abs(banksApart[0] - banksApart[1]))}: fuel is the same for both, so this
					points to a leak or a sensor (common practice). Find that first.
				</p>
			)}
			{Math.abs(found.value) >= usualTrimLimit - 0.01 && (
				<p class="fault">
					A trim this large is where most engine computers stop correcting: the truth may lie further out. Stay out of
					boost, and let your tuner look.
				</p>
			)}
		</>
	);
}

function Doubt({ found: { within, between, banks, banksApart, model } }: { readonly found: TrimFound }) {
	return (
		<details>
			<summary>Where the give or take comes from</summary>
			<div class="stack small">
				<Facts
					facts={[
						{ term: "Fuel or car?", is: `${exactPercent(model)}: what a trim tells of the fuel at all` },
						{ term: "Stretches", is: `${exactPercent(between)}: how far they lie apart` },
						{ term: "Within them", is: exactPercent(within) },
						...(banksApart.length > 1 ? [{ term: "Banks", is: `${exactPercent(banks)}: how far they lie apart` }] : []),
					]}
				/>
				<p>All are standard uncertainties, added in squares.</p>
			</div>
		</details>
	);
}

interface ImpliedProps {
	readonly found: TrimFound;
	readonly calibration: Calibration;
}

function Implied({ found, calibration }: ImpliedProps) {
	const implied = impliedContent(found.value, found.sd, calibration.calibratedFor);
	const on = `“${calibration.name}”, made for ${exactPercent(calibration.calibratedFor)}`;
	return (
		<p>
			{implied.ok
				? `On its own that would be ${percent(implied.value.content)} ethanol, give or take ${points(implied.value.sd)}\u00a0points, on ${on}.`
				: `No blend explains that on ${on}: it lies ${implied.error} what any content would bring. Look for another cause.`}
		</p>
	);
}

function LeftOut({ left }: { readonly left: Readonly<Record<Reason, number>> }) {
	const unit = unitOf(useAppState().state);
	const shown = reasons.filter((reason) => left[reason] >= 1);
	if (shown.length === 0) return null;
	return (
		<details>
			<summary>What did not count</summary>
			<ul class="plainlist small">
				{shown.map((reason) => (
					<li key={reason}>
						{durationWords(left[reason])}: {reasonWords(reason, unit)}
					</li>
				))}
			</ul>
		</details>
	);
}
