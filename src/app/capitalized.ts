import { locale } from "./words/language";

/** Words of the middle of a sentence, as its beginning. */
export function capitalized(words: string): string {
	return words.charAt(0).toLocaleUpperCase(locale) + words.slice(1);
}
