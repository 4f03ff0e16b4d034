import type { LogRead } from "../../../datalog/readLog";
import { firstStepS } from "../../../domain/datalog/constants";
import { Facts } from "../../components/Facts";
import { durationWords, rowsWords, unitName, wholeWords } from "../../dataLogWords";
import { typedNumber } from "../../typedNumber";
import { dataLogWords } from "../../words/dataLog";

interface LogFactsProps {
	readonly name: string;
	readonly read: LogRead;
	/** Whether a reading of it is in the account. */
	readonly counts: boolean;
	readonly onRemap: () => void;
}

/** What was read of a file, what was skipped, and how its columns were understood. */
export function LogFacts({ name, read, counts, onRemap }: LogFactsProps) {
	const { finding, rows, skipped } = read;
	const { seconds, stepS, recordings, columns } = finding;
	const left = skipped.reduce((sum, { count }) => sum + count, 0);
	const words = dataLogWords();
	const { facts } = words;
	return (
		<section class="card" aria-label={words.log}>
			<h2>{words.log}</h2>
			<p role="status">{words.isRead(name, counts)}</p>
			<Facts
				facts={[
					{ term: facts.read, is: facts.averaged(rows, wholeWords(rows), stepWords(stepS)) },
					{
						term: facts.time,
						is: recordings > 1 ? facts.recordings(durationWords(seconds), recordings) : durationWords(seconds),
					},
					{ term: facts.skipped, is: left === 0 ? facts.nothing : rowsWords(left) },
				]}
			/>
			{stepS > firstStepS && <p class="small soft">{words.longSteps(stepWords(firstStepS))}</p>}
			{left > 0 && (
				<ul class="plainlist small">
					{skipped.map(({ why, count, firstLine }) => (
						<li key={why}>{words.skipped(count, wholeWords(count), words.skips[why], wholeWords(firstLine))}</li>
					))}
				</ul>
			)}
			<details>
				<summary>{words.howRead}</summary>
				<div class="stack">
					<Facts
						facts={columns.map(({ role, unit, guessed }) => ({
							term: words.roles[role],
							is: guessed ? words.guessed(unitName(unit)) : unitName(unit),
						}))}
					/>
					<button type="button" class="button wide" onClick={onRemap}>
						{words.tellColumns}
					</button>
				</div>
			</details>
		</section>
	);
}

function stepWords(seconds: number): string {
	const words = dataLogWords();
	return seconds === 0.5 ? words.halfSeconds : seconds === 1 ? words.seconds : `${typedNumber(seconds)}\u00a0s`;
}
