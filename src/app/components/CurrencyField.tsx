import { useId, useMemo } from "preact/hooks";
import { currencyName, knownCurrencies, likelyCurrency } from "../money";
import { moneyWords } from "../words/money";
import { TextField } from "./TextField";

interface CurrencyFieldProps {
	/** Three letters, or nothing. */
	readonly value: string;
	readonly fault?: string | null | undefined;
	readonly onChange: (code: string) => void;
}

/** What fuel is paid in: picked from what the browser knows, else typed. The phone's country is a suggestion, no more. */
export function CurrencyField({ value, fault, onChange }: CurrencyFieldProps) {
	const id = useId();
	const codes = useMemo(() => namedCurrencies(value), [value]);
	const words = moneyWords();
	const likely = likelyCurrency(globalThis.navigator?.language);
	return (
		<>
			{codes.length > 0 ? (
				<div class="field">
					<label for={id}>{words.paidIn}</label>
					<select id={id} class="input" value={value} onChange={(event) => onChange(event.currentTarget.value)}>
						<option value="">{words.notSaid}</option>
						{codes.map(({ code, name }) => (
							<option value={code} key={code}>
								{name === code ? code : `${name} (${code})`}
							</option>
						))}
					</select>
				</div>
			) : (
				<TextField
					label={words.paidIn}
					hint={words.hint}
					value={value}
					fault={fault}
					onInput={(typed) => onChange(typed.trim().toUpperCase())}
				/>
			)}
			{value === "" && likely && (
				<button type="button" class="button wide" onClick={() => onChange(likely)}>
					{words.take(currencyName(likely), likely)}
				</button>
			)}
		</>
	);
}

function namedCurrencies(chosen: string) {
	const known = knownCurrencies();
	if (known.length === 0) return [];
	const codes = chosen === "" || known.includes(chosen) ? known : [chosen, ...known];
	return codes
		.map((code) => ({ code, name: currencyName(code) }))
		.sort((a, b) => a.name.localeCompare(b.name) || (a.code < b.code ? -1 : 1));
}

/** What is wrong with a typed code; null where nothing is. */
export function currencyFault(code: string): string | null {
	return code === "" || /^[A-Z]{3}$/.test(code) ? null : moneyWords().fault;
}
