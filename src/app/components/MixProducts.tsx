import { useId } from "preact/hooks";
import { catalogue } from "../../domain/catalogue";
import type { LogEvent, Product } from "../../domain/event";
import { placesIn, productKey, productsIn } from "../fillChoices";
import type { TableDraft } from "../tableDraft";
import { productName, productRange, soldIn } from "../text";
import { mixesWords } from "../words/mixes";

interface MixProductsProps {
	readonly draft: TableDraft;
	readonly events: readonly LogEvent[];
	readonly onChange: (draft: TableDraft) => void;
}

/** Which two fuels, in which order, from where. */
export function MixProducts({ draft, events, onChange }: MixProductsProps) {
	const { first, second, place } = draft;
	const id = useId();
	const words = mixesWords();
	const places = placesIn(events);
	const named = place === null || places.includes(place) ? places : [place, ...places];
	// The same fuel twice is no mix: then the other one takes its place.
	const choose = (chosen: Product, other: Product, old: Product) =>
		productKey(chosen) === productKey(other) ? [chosen, old] : [chosen, other];
	return (
		<div class="stack">
			<ProductSelect
				label={words.firstFuel}
				chosen={first}
				events={events}
				onChange={(product) => {
					const [one, other] = choose(product, second, first);
					onChange({ ...draft, first: one, second: other });
				}}
			/>
			<ProductSelect
				label={words.thenFuel}
				chosen={second}
				events={events}
				onChange={(product) => {
					const [one, other] = choose(product, first, second);
					onChange({ ...draft, second: one, first: other });
				}}
			/>
			<div class="field">
				<label for={id}>{words.boughtAt}</label>
				<select
					id={id}
					class="input"
					value={place ?? ""}
					onChange={(event) => onChange({ ...draft, place: event.currentTarget.value || null })}
				>
					{named.map((each) => (
						<option key={each} value={each}>
							{each}
						</option>
					))}
					<option value="">{words.unnamedPlace}</option>
				</select>
			</div>
			<button type="button" class="button wide" onClick={() => onChange({ ...draft, first: second, second: first })}>
				{words.otherWay}
			</button>
		</div>
	);
}

interface ProductSelectProps {
	readonly label: string;
	readonly chosen: Product;
	readonly events: readonly LogEvent[];
	readonly onChange: (product: Product) => void;
}

const groups = ["US", "EU", "AU", "BR", "any"] as const;

/** The fuels that were bought, then all others by where they are sold. */
function ProductSelect({ label, chosen, events, onChange }: ProductSelectProps) {
	const id = useId();
	const bought = productsIn(events);
	const known = new Set(bought.map(productKey));
	const extra = known.has(productKey(chosen)) || catalogue.some((entry) => productKey(entry) === productKey(chosen));
	const first = extra ? bought : [chosen, ...bought];
	const all = [...first, ...catalogue];
	const others = (sold: (typeof groups)[number]) =>
		catalogue.filter((entry) => entry.sold === sold && !known.has(productKey(entry)));
	const option = (product: Product) => (
		<option key={productKey(product)} value={productKey(product)}>
			{mixesWords().fuel(productName(product), productRange(product))}
		</option>
	);
	return (
		<div class="field">
			<label for={id}>{label}</label>
			<select
				id={id}
				class="input"
				value={productKey(chosen)}
				onChange={(event) => {
					const product = all.find((each) => productKey(each) === event.currentTarget.value);
					if (product) onChange({ id: product.id, range: product.range });
				}}
			>
				<optgroup label={mixesWords().boughtLast}>{first.map(option)}</optgroup>
				{groups.map((sold) => (
					<optgroup label={soldIn(sold)} key={sold}>
						{others(sold).map(option)}
					</optgroup>
				))}
			</select>
		</div>
	);
}
