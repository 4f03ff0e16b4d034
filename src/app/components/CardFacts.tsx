import type { Card } from "../../share/card";
import { cardFacts, cardTexts } from "../cardFacts";
import { Facts } from "./Facts";

/** All that a card says. */
export function CardFacts({ card }: { readonly card: Card }) {
	return (
		<>
			<Facts facts={cardFacts(card)} />
			{cardTexts(card).map(({ term, is }) => (
				<div key={term}>
					<h3>{term}</h3>
					<p>{is}</p>
				</div>
			))}
		</>
	);
}
