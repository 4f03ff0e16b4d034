/** What people type, as a number or as the reason why it is none. Comma and point both separate decimals. */
import { err, ok, type Result } from "../domain/result";

export type NumberFault = "empty" | "notANumber" | "tooSmall" | "tooLarge";

export function parseNumber(typed: string, least: number, most: number): Result<number, NumberFault> {
	const text = typed.trim();
	if (text === "") return err("empty");
	// No grouping, signs or exponents: at a pump they are slips of the finger.
	if (!/^(\d+([.,]\d*)?|[.,]\d+)$/.test(text)) return err("notANumber");
	const value = Number(text.replace(",", "."));
	if (value < least) return err("tooSmall");
	if (value > most) return err("tooLarge");
	return ok(value);
}
