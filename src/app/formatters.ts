/** Intl's formatters in the language of the app, each made at its first use: the first ones hold up a phone's start. */
import { locale } from "./words/language";

export interface Formatter<Value> {
	format(value: Value): string;
}

function madeLate<Value>(make: () => Formatter<Value>): Formatter<Value> {
	let made: Formatter<Value> | null = null;
	return {
		format(value) {
			made ??= make();
			return made.format(value);
		},
	};
}

/** Decimal signs where most drivers are (CLDR); null: Intl knows. */
function knownSign(tag: string): "." | "," | null {
	if (/^en(-(US|GB))?$/.test(tag)) return ".";
	return /^de(-(DE|AT))?$/.test(tag) ? "," : null;
}

/** `options`: of decimals alone. */
export function numbers(options: Decimals, tag = locale): Formatter<number> {
	const late = madeLate<number>(() => new Intl.NumberFormat(tag, options));
	const { minimumFractionDigits: least = 0, maximumFractionDigits: most = Math.max(least, 3) } = options;
	const sign = options.maximumSignificantDigits === undefined ? knownSign(tag) : null;
	/** Short numbers need no rounding and no groups, and most screens show no others at first. */
	function plain(value: number): string | null {
		if (sign === null || !(value >= 0 && value < 1000)) return null;
		const fixed = value.toFixed(most);
		if (Number(fixed) !== value) return null;
		const [whole, decimals = ""] = fixed.split(".");
		const shown = decimals.slice(0, least) + decimals.slice(least).replace(/0+$/, "");
		return shown === "" ? whole : whole + sign + shown;
	}
	return { format: (value) => plain(value) ?? late.format(value) };
}

type Decimals = Pick<
	Intl.NumberFormatOptions,
	"minimumFractionDigits" | "maximumFractionDigits" | "maximumSignificantDigits"
>;

/** Whole numbers, and with one decimal: most screens have one of these. */
export const whole = numbers({ maximumFractionDigits: 0 });
export const tenth = numbers({ minimumFractionDigits: 1, maximumFractionDigits: 1 });

export function dates(options: Intl.DateTimeFormatOptions): Formatter<number | Date> {
	return madeLate(() => new Intl.DateTimeFormat(locale, options));
}
