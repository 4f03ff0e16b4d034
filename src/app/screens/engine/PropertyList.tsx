import { useState } from "preact/hooks";
import type { Estimate } from "../../../domain/estimator/estimate";
import { type Fraction, fraction } from "../../../domain/quantity";
import { hasSign, propertyRange, propertyTitle, propertyValue } from "../../engineWords";
import { exactPercent, percent } from "../../format";
import { engineWords } from "../../words/engine";
import { type BlendProperty, type PropertyGroup, spanOf } from "./blendProperty";
import { PropertyCurve, type SpotKind, SpotSign } from "./PropertyCurve";

export interface Compared {
	readonly tank: Estimate | null;
	readonly calibratedFor: Fraction | null;
	readonly chosen: number;
}

interface PropertyListProps extends Compared {
	readonly group: PropertyGroup;
	/** Whether it is open before anyone taps it. */
	readonly first: boolean;
	/** What the card adds to a property's sentence. */
	readonly notes: Partial<Record<BlendProperty["id"], string>>;
}

/** Some properties of the blend, each with its numbers, its curve, what it means and where it comes from. */
export function PropertyList({ group, first, notes, ...compared }: PropertyListProps) {
	// What is closed is not drawn: the slider redraws all that is.
	const [drawn, setDrawn] = useState(first);
	return (
		<details class="card" open={first} onToggle={(event) => setDrawn(event.currentTarget.open)}>
			<summary>
				<h2>{engineWords().groups[group.id]}</h2>
			</summary>
			{drawn && (
				<ul class="properties">
					{group.properties.map((property) => (
						<Property key={property.id} property={property} note={notes[property.id]} {...compared} />
					))}
				</ul>
			)}
		</details>
	);
}

interface PropertyProps extends Compared {
	readonly property: BlendProperty;
	readonly note: string | undefined;
}

function Property({ property, note, tank, calibratedFor, chosen }: PropertyProps) {
	const { id, of } = property;
	const words = engineWords();
	const { name, unit, means, source } = words.properties[id];
	const range = tank && propertyRange(id, ...spanOf(property, tank.low, tank.high));
	return (
		<li aria-label={propertyTitle(id)}>
			<h3>
				{name}
				{unit !== "" && <span class="unit">, {unit}</span>}
			</h3>
			<dl class="compared">
				{tank && (
					<Value
						kind="tank"
						term={words.tankNow}
						is={propertyValue(id, of(tank.median))}
						range={range}
						breaks={hasSign(id)}
					/>
				)}
				{calibratedFor !== null && (
					<Value
						kind="calibrated"
						term={words.valueMadeFor(exactPercent(calibratedFor))}
						is={propertyValue(id, of(calibratedFor))}
					/>
				)}
				<Value kind="chosen" term={words.valueAt(percent(chosen))} is={propertyValue(id, of(fraction(chosen)))} />
			</dl>
			<PropertyCurve property={property} tank={tank} calibratedFor={calibratedFor} chosen={chosen} />
			<p class="small">
				{means} {note}
			</p>
			<details class="small source">
				<summary>{words.source}</summary>
				<p>{source}</p>
			</details>
		</li>
	);
}

interface ValueProps {
	readonly kind: SpotKind;
	readonly term: string;
	readonly is: string;
	readonly range?: string | null;
	/** A long range may break. */
	readonly breaks?: boolean;
}

function Value({ kind, term, is, range, breaks }: ValueProps) {
	return (
		<div>
			<dt>
				<SpotSign kind={kind} /> {term}
			</dt>
			<dd class="number">
				{is} {range && <span class={breaks ? "small" : "small nowrap"}>({range})</span>}
			</dd>
		</div>
	);
}
