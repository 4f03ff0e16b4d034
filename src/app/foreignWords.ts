/** What a code says that is none of ours. */
import { codesWords } from "./words/codes";

const longest = 40;

export function foreignWords(text: string): string {
	const { foreign } = codesWords();
	const said = text.replace(/[\p{Control}\p{Format}\p{Surrogate}\p{Zl}\p{Zp}\s]+/gu, " ").trim();
	if (said === "") return foreign.nothing;
	if (/^wifi:/i.test(said)) return foreign.network;
	const address = /^https?:\/\/([^/?#\s]+)/i.exec(said);
	if (address) return foreign.address(shortened(address[1]));
	return foreign.text(shortened(said));
}

function shortened(text: string): string {
	const letters = [...text];
	return letters.length > longest ? `${letters.slice(0, longest - 1).join("")}…` : text;
}
