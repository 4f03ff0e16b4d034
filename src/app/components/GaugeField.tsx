import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { percent } from "../format";
import { stopWords } from "../words/stop";
import "./GaugeField.css";

interface GaugeFieldProps {
	readonly label: string;
	/** Fraction of the tank; null: nobody looked. */
	readonly value: number | null;
	readonly onChange: (value: number | null) => void;
	readonly hint?: ComponentChildren;
	/** What "nobody looked" is called here. */
	readonly unknown?: string;
}

/** Nobody reads a needle closer than this. */
const steps = 16;

/** The fuel gauge in sixteenths: a slider, a step either way, and "not looked". */
export function GaugeField({ label, value, onChange, hint, unknown: named }: GaugeFieldProps) {
	const id = useId();
	const stop = stopWords();
	const unknown = named ?? stop.notLooked;
	const step = value === null ? null : Math.round(value * steps);
	const set = (to: number) => onChange(Math.min(steps, Math.max(0, to)) / steps);
	const words = value === null ? null : gaugeWords(value);
	return (
		<div class="field gauge">
			<label for={id}>{label}</label>
			{hint && (
				<p class="small soft" id={`${id}-hint`}>
					{hint}
				</p>
			)}
			<input
				id={id}
				class={step === null ? "unset" : ""}
				type="range"
				min={0}
				max={steps}
				step={1}
				value={step ?? steps / 2}
				aria-valuetext={words ?? unknown}
				aria-describedby={hint ? `${id}-hint` : undefined}
				onInput={(event) => set(event.currentTarget.valueAsNumber)}
				// A tap right where the thumb rests changes nothing for the browser, but it says something.
				onClick={(event) => step === null && set(event.currentTarget.valueAsNumber)}
			/>
			<div class="scale small" aria-hidden="true">
				<span>{stop.empty}</span>
				<span>¼</span>
				<span>½</span>
				<span>¾</span>
				<span>{stop.full}</span>
			</div>
			<div class="reading">
				<button
					type="button"
					class="button"
					aria-label={stop.less(label)}
					aria-disabled={step === 0}
					onClick={() => set((step ?? steps / 2 + 1) - 1)}
				>
					−
				</button>
				<output class={words === null ? "soft" : "number"} for={id}>
					{words ?? stop.slide}
				</output>
				<button
					type="button"
					class="button"
					aria-label={stop.more(label)}
					aria-disabled={step === steps}
					onClick={() => set((step ?? steps / 2 - 1) + 1)}
				>
					+
				</button>
			</div>
			<button type="button" class="button wide" aria-pressed={value === null} onClick={() => onChange(null)}>
				{unknown}
			</button>
		</div>
	);
}

/** A gauge as one reads it, in eighths, and in percent. */
export function gaugeWords(value: number): string {
	const step = Math.round(value * steps);
	const { empty, full, between } = stopWords();
	const eighths = [empty, "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞", full];
	const [below, above] = [eighths[Math.floor(step / 2)], eighths[Math.ceil(step / 2)]];
	const words = below === above ? below : between(below, above);
	return `${words} (${percent(step / steps)})`;
}
