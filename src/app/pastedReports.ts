/** Reports in a text: as pasted from messages, one after the other, with whatever stands between them. */

/** How a file of this app begins: a new one, even where the one before was cut off. */
const beginning = /\{\s*"format"/y;

/** Each from its first brace to the one that closes it; what is never closed goes to the next, or to the end. In one pass. */
export function textsIn(text: string): string[] {
	const found: string[] = [];
	let [depth, begin, quoted] = [0, 0, false];
	for (let i = 0; i < text.length; i++) {
		const letter = text[i];
		beginning.lastIndex = i;
		if (letter === "{" && (depth === 0 || beginning.test(text))) {
			if (depth > 0) found.push(text.slice(begin, i));
			[depth, begin, quoted] = [1, i, false];
		} else if (depth === 0) continue;
		else if (quoted) {
			if (letter === "\\") i++;
			else quoted = letter !== '"';
		} else if (letter === '"') quoted = true;
		else if (letter === "{") depth++;
		else if (letter === "}" && --depth === 0) found.push(text.slice(begin, i + 1));
	}
	if (depth > 0) found.push(text.slice(begin));
	return found;
}
