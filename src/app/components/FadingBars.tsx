import type { ProductKnown } from "../../keeper/advice";
import { aheadWords, pointsWide } from "../placeWords";
import { placesWords } from "../words/places";
import "./FadingBars.css";

/** How wide the range grows while nobody looks, each bar beside that of the label alone. */
export function FadingBars({ pump }: { readonly pump: ProductKnown["pump"] }) {
	const { fading, labelWidth } = pump;
	const most = Math.max(labelWidth, ...fading.map(({ width }) => width));
	if (!(most > 0)) return null;
	const words = placesWords();
	const rows = [
		...fading.map(({ days, width }) => ({ name: aheadWords(days), width, label: false })),
		{ name: words.labelAlone, width: labelWidth, label: true },
	];
	return (
		<figure class="fading">
			<figcaption class="small">{words.growing}</figcaption>
			<ul>
				{rows.map(({ name, width, label }) => (
					<li key={name}>
						<span class="pair small">
							<span>{name}</span>
							<span class="number">{pointsWide(width)}</span>
						</span>
						<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
							<rect class={label ? "bar label" : "bar"} width={(100 * width) / most} height={10} />
						</svg>
					</li>
				))}
			</ul>
		</figure>
	);
}
