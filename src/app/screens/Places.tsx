import type { PlaceKnown, ProductKnown } from "../../keeper/advice";
import { isoWithOffset, useAppState } from "../app";
import { deliveredRange, deliveredWords, visitWords } from "../placeWords";
import { printRoute } from "../route";
import { productName } from "../text";
import { useAnswer } from "../useAnswer";
import { placesWords } from "../words/places";
import "./Places.css";
import { useMoment } from "../moment";

/** Where fuel was bought or tested, and what is known of each pump. */
export function PlacesScreen() {
	const { now } = useAppState();
	const { places, failed } = usePlaces();
	const words = placesWords();
	if (failed) return <Failed />;
	if (!places) return <p class="soft">{words.reading}</p>;
	if (places.length === 0) {
		return (
			<div class="card">
				<h2>{words.none}</h2>
				<p>{words.noneMore}</p>
				<a class="button main" href="#/fill">
					{words.record}
				</a>
			</div>
		);
	}
	return (
		<section class="card places" aria-label={words.places}>
			<h2>{words.places}</h2>
			<ul>
				{places.map((place) => (
					<li key={place.place}>
						<a href={printRoute({ screen: "place", id: place.place })}>
							<strong>{place.place}</strong>
							<span class="small soft">{visitWords(place, now())}</span>
							{place.products.map((known) => (
								<Line key={JSON.stringify(known.product)} known={known} />
							))}
						</a>
					</li>
				))}
			</ul>
		</section>
	);
}

function Line({ known: { product, pump } }: { readonly known: ProductKnown }) {
	return (
		<span class="pump">
			<span>{placesWords().delivers(productName(product), deliveredWords(pump), deliveredRange(pump))}</span>
			<Strip range={product.range} low={pump.low} median={pump.median} high={pump.high} />
		</span>
	);
}

interface StripProps {
	readonly range: readonly [number, number];
	readonly low: number;
	readonly median: number;
	readonly high: number;
}

/** Nothing to pure ethanol: what the label allows as a frame, what is known as the bar in it. The words stand above it. */
function Strip({ range: [least, most], low, median, high }: StripProps) {
	return (
		<svg viewBox="-1 0 102 12" preserveAspectRatio="none" aria-hidden="true">
			<line class="rail" x1={0} x2={100} y1={6} y2={6} />
			<rect class="known" x={100 * low} width={Math.max(0.8, 100 * (high - low))} y={3} height={6} />
			<path class="label" d={`M${100 * least} 0.5V11.5M${100 * most} 0.5V11.5`} />
			<line class="median" x1={100 * median} x2={100 * median} y1={1} y2={11} />
		</svg>
	);
}

/** Every place of the active car's log, asked anew with every entry. */
export function usePlaces(): { readonly places: readonly PlaceKnown[] | undefined; readonly failed: boolean } {
	const { model, state } = useAppState();
	const opened = useMoment(state.events);
	const { car, account } = state;
	const key = car && account ? `${car.id} ${account.count}` : null;
	const { answer, failed } = useAnswer(key, () => model.places(car?.id ?? "", isoWithOffset(opened)));
	return { places: answer ?? undefined, failed };
}

export function Failed() {
	return <p class="fault">{placesWords().failed}</p>;
}
