/** Numbers as people type them here: with the decimal sign of their language. Read is either. */
import { locale } from "./words/language";

const mark = (1.5).toLocaleString(locale).includes(",") ? "," : ".";

/** A number, or the digits of one with a point. */
export function typedNumber(value: number | string): string {
	return String(value).replace(".", mark);
}
