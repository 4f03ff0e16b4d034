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

/** `options`: of decimals alone. */
export function numbers(options: Decimals): Formatter<number> {
	const late = madeLate<number>(() => new Intl.NumberFormat(locale, options));
	const rounds = options.minimumFractionDigits !== undefined || options.maximumSignificantDigits !== undefined;
	// Every language of the app writes these so, and most screens need no others at first.
	const isPlain = (value: number) => Number.isInteger(value) && value >= 0 && value < 1000;
	return { format: (value) => (!rounds && isPlain(value) ? String(value) : late.format(value)) };
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
