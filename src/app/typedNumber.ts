/** Numbers as people type them here: with the decimal sign of their language. Read is either. */
import { numbers } from "./formatters";

const aNumber = numbers({});

/** The decimal sign of the language. */
export function decimalSign(): "," | "." {
	return aNumber.format(1.5).includes(",") ? "," : ".";
}

/** A number, or the digits of one with a point. */
export function typedNumber(value: number | string): string {
	return String(value).replace(".", () => decimalSign());
}
