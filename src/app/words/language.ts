/**
 * The language of the app's words. It is known before any code of a screen runs and stays until the next start, so words
 * are plain values. English comes with the screen that needs it, any other language in a file of its own.
 */
export type Language = "en" | "de";

/** In their own words, for whoever can read no other. */
export const languageNames: Readonly<Record<Language, string>> = { en: "English", de: "Deutsch" };

const key = "heeltap-language";

/** The language chosen on this device; null: the browser's. */
export function chosenLanguage(): Language | null {
	try {
		const chosen = localStorage.getItem(key) ?? "";
		return isLanguage(chosen) ? chosen : null;
	} catch {
		return null;
	}
}

/** Counts from the next start on. Throws where the browser keeps nothing. */
export function chooseLanguage(chosen: Language | null): void {
	if (chosen) localStorage.setItem(key, chosen);
	else localStorage.removeItem(key);
}

const wished = globalThis.navigator?.languages ?? [];

/** The language that a choice comes to; null: the browser's. */
export function languageFor(chosen: Language | null): Language {
	return chosen ?? wished.map(tongueOf).find(isLanguage) ?? "en";
}

export const language: Language = languageFor(chosenLanguage());

/** For numbers and dates: the driver's own where it is of that language (`de-AT`). */
export const locale: string = wished.find((wish) => tongueOf(wish) === language) ?? language;

function tongueOf(tag: string): string {
	return tag.toLowerCase().split("-")[0];
}

function isLanguage(text: string): text is Language {
	return Object.hasOwn(languageNames, text);
}

let loading: Promise<unknown> = Promise.resolve();

/** Words of one area. What loads them is waited for by `wordsReady`; should it fail, they are English. */
export function inLanguage<Words>(english: Words, german: () => Promise<{ readonly words: Words }>): () => Words {
	let words = english;
	if (language === "de") {
		const coming = german().then(
			(loaded) => {
				words = loaded.words;
			},
			() => {},
		);
		loading = Promise.all([loading, coming]);
	}
	return () => words;
}

/** Resolves once the words of all code loaded so far are there. */
export function wordsReady(): Promise<unknown> {
	return loading;
}
