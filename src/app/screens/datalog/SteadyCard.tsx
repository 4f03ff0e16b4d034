import type { Finding } from "../../../domain/datalog/finding";
import { type Reason, reasons } from "../../../domain/datalog/steady";
import type { TrimFound } from "../../../domain/datalog/trimReading";
import { impliedContent, unevenBanks, usualTrimLimit } from "../../../domain/readings/trims";
import type { Calibration } from "../../../domain/vehicle";
import { useAppState } from "../../app";
import { Emphasised } from "../../components/Emphasised";
import { Facts } from "../../components/Facts";
import { durationWords, reasonWords } from "../../dataLogWords";
import { exactPercent, percent, points } from "../../format";
import { unitOf } from "../../model";
import { signedPercent } from "../../shownByte";
import { dataLogWords } from "../../words/dataLog";
import { figuresWords } from "../../words/figures";
import { StretchTable } from "./StretchTable";
import { TrimChart } from "./TrimChart";

interface SteadyCardProps {
	readonly finding: Finding;
	/** In force when the log was recorded. */
	readonly calibration: Calibration | null;
	/** Whether more than the result is there yet, and whether the picture is: see useTurns.ts. */
	readonly told: boolean;
	readonly drawn: boolean;
}

/** The fuel trim of steady driving: the picture, the value, and what it would mean by itself. */
export function SteadyCard({ finding: { steady, columns }, calibration, told, drawn }: SteadyCardProps) {
	const words = dataLogWords();
	if (!steady) {
		return (
			<section class="card" aria-label={words.steady}>
				<h2>{words.steady}</h2>
				<p>{words.noTrims}</p>
			</section>
		);
	}
	const { found, stretches, left } = steady;
	const has = (role: string) => columns.some((column) => column.role === role);
	return (
		<section class="card" aria-label={words.steady} aria-busy={!(told && drawn)}>
			<h2>{words.steady}</h2>
			{found ? (
				<p class="lead">
					<Emphasised text={words.trimLead(signedPercent(found.value), exactPercent(found.sd))} />
				</p>
			) : (
				<Nothing left={left} />
			)}
			{drawn && <TrimChart steady={steady} />}
			{told && (
				<>
					{found && <Found found={found} stretches={stretches.length} />}
					{found && calibration && <Implied found={found} calibration={calibration} />}
					{!has("coolant") && <p class="small">{words.noCoolant}</p>}
					{!has("speed") && !has("rpm") && <p class="small">{words.noSpeed}</p>}
					{found && <Doubt found={found} />}
					{stretches.length > 0 && <StretchTable stretches={stretches} />}
					<LeftOut left={left} />
				</>
			)}
		</section>
	);
}

function Nothing({ left }: { readonly left: Readonly<Record<Reason, number>> }) {
	// What comes last in the order was nearest to a reading, if there was enough of it.
	const nearest = [...reasons].reverse().find((reason) => left[reason] >= 10) ?? "tooShort";
	const { nothingSteady, advice } = dataLogWords();
	return <p class="fault">{nothingSteady(advice[nearest])}</p>;
}

function Found({ found, stretches }: { readonly found: TrimFound; readonly stretches: number }) {
	const words = dataLogWords();
	const { banksApart, seconds } = found;
	const [one, other] = banksApart;
	return (
		<>
			<Facts
				facts={[
					{ term: words.steadyFor, is: words.inStretches(durationWords(seconds), stretches) },
					...(banksApart.length > 1
						? [{ term: words.bothBanks, is: words.and(signedPercent(one), signedPercent(other)) }]
						: []),
				]}
			/>
			{banksApart.length > 1 && Math.abs(one - other) > unevenBanks && (
				<p class="fault">{figuresWords().uneven(percent(Math.abs(one - other)))}</p>
			)}
			{Math.abs(found.value) >= usualTrimLimit - 0.01 && <p class="fault">{words.trimAtLimit}</p>}
		</>
	);
}

function Doubt({ found: { within, between, banks, banksApart, model } }: { readonly found: TrimFound }) {
	const { sdFrom, sdParts, sdAdded } = dataLogWords();
	return (
		<details>
			<summary>{sdFrom}</summary>
			<div class="stack small">
				<Facts
					facts={[
						{ term: sdParts.model, is: sdParts.modelIs(exactPercent(model)) },
						{ term: sdParts.between, is: sdParts.apart(exactPercent(between)) },
						{ term: sdParts.within, is: exactPercent(within) },
						...(banksApart.length > 1 ? [{ term: sdParts.banks, is: sdParts.apart(exactPercent(banks)) }] : []),
					]}
				/>
				<p>{sdAdded}</p>
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
	const words = dataLogWords();
	const { name } = calibration;
	const madeFor = exactPercent(calibration.calibratedFor);
	if (!implied.ok) return <p>{words.unexplained(implied.error, name, madeFor)}</p>;
	const { content, sd } = implied.value;
	return <p>{words.implied(percent(content), points(sd), name, madeFor)}</p>;
}

function LeftOut({ left }: { readonly left: Readonly<Record<Reason, number>> }) {
	const { didNotCount, notCounted } = dataLogWords();
	const unit = unitOf(useAppState().state);
	const shown = reasons.filter((reason) => left[reason] >= 1);
	if (shown.length === 0) return null;
	return (
		<details>
			<summary>{didNotCount}</summary>
			<ul class="plainlist small">
				{shown.map((reason) => (
					<li key={reason}>{notCounted(durationWords(left[reason]), reasonWords(reason, unit))}</li>
				))}
			</ul>
		</details>
	);
}
