import { cautionsWords } from "../words/cautions";

/** The usual cautions of the trade. */
export function Cautions() {
	return (
		<ul class="cautions">
			{cautionsWords().usual.map((caution) => (
				<li key={caution}>{caution}</li>
			))}
		</ul>
	);
}
