import { cardWords } from "../words/card";
import { handWords } from "../words/hand";

/** The ways to other phones and to tuners. */
export function OtherPhones() {
	const words = handWords();
	return (
		<section class="card" aria-label={words.carTitle}>
			<h2>{words.carTitle}</h2>
			<a class="button wide" href="#/take">
				{words.carTake}
			</a>
			<a class="button wide" href="#/hand">
				{words.carHand}
			</a>
			<a class="button wide" href="#/live">
				{words.carLive}
			</a>
			<a class="button wide" href="#/card">
				{cardWords().makeCard}
			</a>
		</section>
	);
}
