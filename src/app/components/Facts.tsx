import type { ComponentChildren } from "preact";
import "./Facts.css";

interface FactsProps {
	readonly facts: readonly { readonly term: string; readonly is: ComponentChildren }[];
}

/** Terms and what they are. */
export function Facts({ facts }: FactsProps) {
	return (
		<dl class="facts">
			{facts.map(({ term, is }) => (
				<div key={term}>
					<dt>{term}</dt>
					<dd>{is}</dd>
				</div>
			))}
		</dl>
	);
}
