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
import { placesWords } from "../words/places";
import { Failed, usePlaces } from "./Places";

/** One place: what is known of each of its pumps, from what, and how that fades. */
export function PlaceScreen({ name }: { readonly name: string }) {
	const { state } = useAppState();
	const { places, failed } = usePlaces();
	const words = placesWords();
	const place = places?.find((known) => known.place === name);
	return (
		<>
			<a class="button" href="#/places">
				{words.all}
			</a>
			{failed ? (
				<Failed />
			) : !places ? (
				<p class="soft">{words.reading}</p>
			) : place ? (
				<Known place={place} />
			) : (
				<p class="fault">{words.notHere(state.car?.name ?? "", name)}</p>
			)}
		</>
	);
}

function Known({ place }: { readonly place: PlaceKnown }) {
	const words = placesWords();
	const { now } = useAppState();
	return (
		<>
			<section class="card" aria-label={words.place}>
				<h2>{place.place}</h2>
				<p>{visitWords(place, now())}</p>
			</section>
			{place.products.map((known) => (
				<Product key={JSON.stringify(known.product)} known={known} />
			))}
			<details class="card">
				<summary>{words.restsOn}</summary>
				<p>{words.restsOnMore}</p>
			</details>
		</>
	);
}

function Product({ known }: { readonly known: ProductKnown }) {
	const { state, now } = useAppState();
	const { product, pump, fills, samples, lastFill, lastSample, price } = known;
	const [low, high] = product.range;
	const name = productName(product);
	const words = placesWords();
	const seen = (count: number, last: string | null) =>
		last === null ? words.never : words.times(count, ago(last, now()));
	return (
		<section class="card" aria-label={name}>
			<h2>{name}</h2>
			{/* A label without a range has no bracket to stand in. */}
			<DotPlot dots={pump.dots} window={low < high ? product.range : null} calibratedFor={null} bracket="label" />
			<dl class="figures">
				<div>
					<dt>{words.median}</dt>
					<dd class="number">{deliveredWords(pump)}</dd>
				</div>
				<div>
					<dt>{words.range}</dt>
					<dd class="number">{deliveredRange(pump)}</dd>
				</div>
			</dl>
			<p>{knownWords(known, now())}</p>
			{isBetterKnown(pump) && <FadingBars pump={pump} />}
			<Facts
				facts={[
					{ term: words.labelAllows, is: productRange(product) },
					{ term: words.boughtHere, is: seen(fills, lastFill) },
					{ term: words.testedHere, is: seen(samples, lastSample) },
					{
						term: words.lastPrice,
						is: price
							? words.priceOn(unitPrice(price.perLitre, unitOf(state), state.car?.currency), date(price.at))
							: words.noPrice,
					},
				]}
			/>
		</section>
	);
}
