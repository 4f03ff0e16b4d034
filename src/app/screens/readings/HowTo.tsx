import { useState } from "preact/hooks";
import { readingsWords } from "../../words/readings";

interface HowToProps {
	readonly title: string;
	/** What it is, and how far it can be trusted. */
	readonly about: string;
	readonly steps: readonly string[];
	readonly cautions: readonly string[];
	/** Whoever has measured this way before need not scroll past the steps again. */
	readonly known: boolean;
}

/** How one measures, in steps, and what to mind. */
export function HowTo({ title, about, steps, cautions, known }: HowToProps) {
	const words = readingsWords();
	const [open] = useState(!known);
	return (
		<section class="card" aria-label={title}>
			<h2>{title}</h2>
			<p>{about}</p>
			<details open={open}>
				<summary>{words.howTo}</summary>
				<ol class="steps">
					{steps.map((step) => (
						<li key={step}>{step}</li>
					))}
				</ol>
			</details>
			{cautions.length > 0 && (
				<>
					<h3>{words.cautions}</h3>
					<ul class="steps">
						{cautions.map((caution) => (
							<li key={caution}>{caution}</li>
						))}
					</ul>
				</>
			)}
		</section>
	);
}
