import type { PlaceKnown, ProductKnown } from "../../keeper/advice";
import { useAppState } from "../app";
import { DotPlot } from "../components/DotPlot";
import { Facts } from "../components/Facts";
import { FadingBars } from "../components/FadingBars";
import { ago, date } from "../format";
import { unitOf } from "../model";
import { unitPrice } from "../money";
import { deliveredRange, deliveredWords, isBetterKnown, knownWords, visitWords } from "../placeWords";
import { productName, productRange } from "../text";
import { Failed, usePlaces } from "./Places";

/** One place: what is known of each of its pumps, from what, and how that fades. */
export function PlaceScreen({ name }: { readonly name: string }) {
	const { state } = useAppState();
	const { places, failed } = usePlaces();
	const place = places?.find((known) => known.place === name);
	return (
		<>
			<a class="button" href="#/places">
				All places
			</a>
			{failed ? (
				<Failed />
			) : !places ? (
				<p class="soft">Looking through the log…</p>
			) : place ? (
				<Known place={place} />
			) : (
				<p class="fault">
					No fill and no test in the log of “{state.car?.name}” names the place “{name}”.
				</p>
			)}
		</>
	);
}

function Known({ place }: { readonly place: PlaceKnown }) {
	const { now } = useAppState();
	return (
		<>
			<section class="card" aria-label="Place">
				<h2>{place.place}</h2>
				<p>{visitWords(place, now())}</p>
			</section>
			{place.products.map((known) => (
				<Product key={JSON.stringify(known.product)} known={known} />
			))}
			<details class="card">
				<summary>What this rests on</summary>
				<p>
					Pumps of one area buy from the same terminals, so a test at one place says a little of all of them. What is
					known of a place’s own fuel fades: after 45 days about a third of it is left (common practice). About one
					delivery in ten lies outside its label (SAE 2013-01-9071).
				</p>
			</details>
		</>
	);
}

function Product({ known }: { readonly known: ProductKnown }) {
	const { state, now } = useAppState();
	const { product, pump, fills, samples, lastFill, lastSample, price } = known;
	const [low, high] = product.range;
	const name = productName(product);
	const seen = (count: number, last: string | null) =>
		last === null ? "never" : `${count === 1 ? "once" : `${count} times`}, last ${ago(last, now())}`;
	return (
		<section class="card" aria-label={name}>
			<h2>{name}</h2>
			{/* A label without a range has no bracket to stand in. */}
			<DotPlot dots={pump.dots} window={low < high ? product.range : null} calibratedFor={null} bracketName="label" />
			<dl class="figures">
				<div>
					<dt>Most likely about</dt>
					<dd class="number">{deliveredWords(pump)}</dd>
				</div>
				<div>
					<dt>9 in 10</dt>
					<dd class="number">{deliveredRange(pump)}</dd>
				</div>
			</dl>
			<p>{knownWords(known, now())}</p>
			{isBetterKnown(pump) && <FadingBars pump={pump} />}
			<Facts
				facts={[
					{ term: "Label allows", is: productRange(product) },
					{ term: "Bought here", is: seen(fills, lastFill) },
					{ term: "Tested here", is: seen(samples, lastSample) },
					{
						term: "Last price",
						is: price
							? `${unitPrice(price.perLitre, unitOf(state), state.car?.currency)}, ${date(price.at)}`
							: "none entered",
					},
				]}
			/>
		</section>
	);
}
