import { useState } from "preact/hooks";
import { catalogue, labelledRange } from "../../domain/catalogue";
import type { Product } from "../../domain/event";
import { contentRange } from "../../domain/quantity";
import { productKey } from "../fillChoices";
import { oneLine } from "../oneLine";
import { parseNumber } from "../parseNumber";
import { productName, productRange, soldIn } from "../text";
import { pickerWords } from "../words/picker";
import "./ProductPicker.css";

interface ProductPickerProps {
	readonly recent: readonly Product[];
	readonly chosen: Product;
	readonly onChoose: (product: Product) => void;
	readonly label?: string;
}

/** The last used products as buttons; all others, and one's own, behind one more tap. */
export function ProductPicker({ recent, chosen, onChoose, label = pickerWords().question }: ProductPickerProps) {
	const chips = recent.some((product) => productKey(product) === productKey(chosen))
		? recent.slice(0, 4)
		: [chosen, ...recent.slice(0, 3)];
	const [other, setOther] = useState(false);
	const choose = (product: Product) => {
		setOther(false);
		onChoose(product);
	};
	return (
		<fieldset class="stack">
			<legend class="label">{label}</legend>
			<div class="products">
				{chips.map((product) => (
					<button
						type="button"
						class="button product"
						key={productKey(product)}
						aria-pressed={productKey(product) === productKey(chosen)}
						onClick={() => choose(product)}
					>
						<span>{productName(product)}</span>
						<span class="small">{productRange(product)}</span>
					</button>
				))}
				<button type="button" class="button product" aria-expanded={other} onClick={() => setOther(!other)}>
					{pickerWords().another}
				</button>
			</div>
			{other && <AllProducts onChoose={choose} />}
		</fieldset>
	);
}

const groups = ["US", "EU", "AU", "BR", "any"] as const;

/** Every fuel of the catalogue, and one's own. */
export function AllProducts({ onChoose }: { readonly onChoose: (product: Product) => void }) {
	return (
		<div class="card">
			{groups.map((sold) => (
				<section class="stack" key={sold} aria-label={soldIn(sold)}>
					<h3>{soldIn(sold)}</h3>
					{catalogue
						.filter((entry) => entry.sold === sold)
						.map(({ id, range, source }) => (
							<button type="button" class="button wide product" key={id} onClick={() => onChoose({ id, range })}>
								<span>{pickerWords().entry(productName({ id, range }), productRange({ id, range }))}</span>
								<span class="small">{pickerWords().source(source)}</span>
							</button>
						))}
				</section>
			))}
			<Labelled onChoose={onChoose} />
			<Own onChoose={onChoose} />
		</div>
	);
}

/** Flex fuel whose pump names a percentage: it may be rounded to the nearest ten (16 CFR 306). */
function Labelled({ onChoose }: { readonly onChoose: (product: Product) => void }) {
	const [typed, setTyped] = useState("");
	const value = parseNumber(typed, 11, 83);
	const words = pickerWords();
	return (
		<div class="field">
			<label for="labelled">{words.labelled}</label>
			<div class="row">
				<input
					id="labelled"
					class="input short"
					inputMode="decimal"
					autocomplete="off"
					value={typed}
					onInput={(event) => setTyped(event.currentTarget.value)}
				/>
				<button
					type="button"
					class="button"
					disabled={!value.ok}
					onClick={() => value.ok && onChoose({ id: `flex-${value.value}`, range: labelledRange(value.value) })}
				>
					{words.take}
				</button>
			</div>
			<p class="small">{words.rounded}</p>
		</div>
	);
}

function Own({ onChoose }: { readonly onChoose: (product: Product) => void }) {
	const [name, setName] = useState("");
	const [low, setLow] = useState("");
	const [high, setHigh] = useState("");
	const from = parseNumber(low, 0, 100);
	const to = parseNumber(high, 0, 100);
	const words = pickerWords();
	const usable = name.trim() !== "" && from.ok && to.ok && from.value <= to.value;
	return (
		<div class="stack">
			<h3>{words.own}</h3>
			<div class="field">
				<label for="own-name">{words.name}</label>
				<input
					id="own-name"
					class="input"
					maxLength={60}
					value={name}
					onInput={(event) => setName(oneLine(event.currentTarget.value))}
				/>
			</div>
			<div class="row">
				<div class="field short">
					<label for="own-low">{words.from}</label>
					<input
						id="own-low"
						class="input"
						inputMode="decimal"
						value={low}
						onInput={(event) => setLow(event.currentTarget.value)}
					/>
				</div>
				<div class="field short">
					<label for="own-high">{words.to}</label>
					<input
						id="own-high"
						class="input"
						inputMode="decimal"
						value={high}
						onInput={(event) => setHigh(event.currentTarget.value)}
					/>
				</div>
			</div>
			{from.ok && to.ok && from.value > to.value && <p class="fault">{words.swapped}</p>}
			<button
				type="button"
				class="button"
				disabled={!usable}
				onClick={() => usable && onChoose({ id: name.trim(), range: contentRange(from.value / 100, to.value / 100) })}
			>
				{words.use}
			</button>
		</div>
	);
}
