import type { LogRead } from "../../../datalog/readLog";
import { firstStepS } from "../../../domain/datalog/constants";
import { Facts } from "../../components/Facts";
import { durationWords, roleNames, rowsWords, skipWords, unitNames, wholeWords } from "../../dataLogWords";

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
	return (
		<section class="card" aria-label="The log">
			<h2>The log</h2>
			<p role="status">
				“{name}” is read.{" "}
				{counts ? "This log already counts: a reading of it is in the account." : "Nothing is saved yet."}
			</p>
			<Facts
				facts={[
					{ term: "Read", is: `${rowsWords(rows)}, averaged over ${stepWords(stepS)}` },
					{ term: "Time", is: durationWords(seconds) + (recordings > 1 ? ` in ${recordings} recordings` : "") },
					{ term: "Skipped", is: left === 0 ? "nothing" : rowsWords(left) },
				]}
			/>
			{stepS > firstStepS && (
				<p class="small soft">
					The log is so long that it was averaged over longer steps than the usual {stepWords(firstStepS)}.
				</p>
			)}
			{left > 0 && (
				<ul class="plainlist small">
					{skipped.map(({ why, count, firstLine }) => (
						<li key={why}>
							{rowsWords(count)} {skipWords[why]}, the first in line {wholeWords(firstLine)}
						</li>
					))}
				</ul>
			)}
			<details>
				<summary>How the columns were read</summary>
				<div class="stack">
					<Facts
						facts={columns.map(({ role, unit, guessed }) => ({
							term: roleNames[role],
							is: unitNames[unit] + (guessed ? ", as the values suggest" : ""),
						}))}
					/>
					<button type="button" class="button wide" onClick={onRemap}>
						Tell what the columns are
					</button>
				</div>
			</details>
		</section>
	);
}

function stepWords(seconds: number): string {
	return seconds === 0.5 ? "half seconds" : seconds === 1 ? "seconds" : `${seconds}\u00a0s`;
}
