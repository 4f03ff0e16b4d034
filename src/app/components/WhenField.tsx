import { isoWithOffset } from "../app";
import { stopWords } from "../words/stop";

interface WhenFieldProps {
	/** ISO 8601 with offset; null: now. */
	readonly value: string | null;
	readonly now: number;
	readonly onChange: (at: string | null) => void;
}

/** For stops that are entered later. */
export function WhenField({ value, now, onChange }: WhenFieldProps) {
	const words = stopWords();
	return (
		<div class="field">
			<label for="when">{words.when}</label>
			<div class="row">
				<button type="button" class="button" aria-pressed={value === null} onClick={() => onChange(null)}>
					{words.now}
				</button>
				<input
					id="when"
					class="input grow"
					type="datetime-local"
					value={(value ?? isoWithOffset(now)).slice(0, 16)}
					max={isoWithOffset(now).slice(0, 16)}
					onChange={(event) => {
						const chosen = Date.parse(event.currentTarget.value);
						if (Number.isFinite(chosen)) onChange(isoWithOffset(Math.min(chosen, now)));
					}}
				/>
			</div>
		</div>
	);
}
