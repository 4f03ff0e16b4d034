import { decimalSign } from "../typedNumber";
import { stopWords } from "../words/stop";
import "./Keypad.css";

interface KeypadProps {
	readonly value: string;
	readonly onChange: (value: string) => void;
	/** What is being typed, for those who hear it. */
	readonly label: string;
}

const longest = 7;

/** Keys for gloves: large, in the thumb's reach, and no system keyboard that hides the dots. */
export function Keypad({ value, onChange, label }: KeypadProps) {
	const words = stopWords();
	const separator = decimalSign();
	const press = (key: string) => {
		if (value.length >= longest) return;
		if (key === separator) {
			if (!/[.,]/.test(value)) onChange(value === "" ? `0${separator}` : value + separator);
		} else onChange(value === "0" ? key : value + key);
	};
	return (
		<fieldset class="keypad" aria-label={words.keys(label)}>
			{["1", "2", "3", "4", "5", "6", "7", "8", "9", separator, "0"].map((key) => (
				<button
					type="button"
					class="key"
					key={key}
					onClick={() => press(key)}
					aria-label={key === separator ? words.decimal : key}
				>
					{key}
				</button>
			))}
			<button type="button" class="key" aria-label={words.deleteDigit} onClick={() => onChange(value.slice(0, -1))}>
				⌫
			</button>
		</fieldset>
	);
}
