import type { Warning } from "../../domain/warnings";
import { signalWord, warningWords } from "../text";
import { tankWords } from "../words/tank";
import "./WarningCard.css";

interface WarningCardProps {
	readonly warning: Warning;
	readonly calibrationName: string;
	/** What to add, where it is known. */
	readonly mend?: string | null | undefined;
	/** Leads to what may be behind it. */
	readonly settle?: boolean;
}

/** What is wrong, how sure, what to do now, and why one is told. */
export function WarningCard({ warning, calibrationName, mend, settle }: WarningCardProps) {
	const { behind, whyTold } = tankWords();
	const words = warningWords(warning, calibrationName);
	const strong = "severity" in warning && warning.severity === "likely";
	return (
		<section class={`warning ${strong ? "strong" : ""}`} role={strong ? "alert" : "group"} aria-label={words.title}>
			<p class="signal">{signalWord()}</p>
			<h2>{words.title}</h2>
			<p>{words.sure}</p>
			<ul>
				{words.now.map((line) => (
					<li key={line}>{line}</li>
				))}
				{mend && <li>{mend}</li>}
			</ul>
			{settle && (
				<a class="button wide" href="#/doubt">
					{behind}
				</a>
			)}
			<details>
				<summary>{whyTold}</summary>
				<p>{words.why}</p>
			</details>
		</section>
	);
}
