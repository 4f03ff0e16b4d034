/** Reports in a text: as pasted from messages, one after the other, with whatever stands between them. */

/** Each from its first brace to the one that closes it; what is never closed goes to the end. In one pass. */
export function textsIn(text: string): string[] {
	const found: string[] = [];
	let [depth, begin, quoted] = [0, 0, false];
	for (let i = 0; i < text.length; i++) {
		const letter = text[i];
		if (depth > 0 && quoted) {
			if (letter === "\\") i++;
			else if (letter === '"') quoted = false;
		} else if (letter === "{") {
			if (depth === 0) begin = i;
			depth++;
		} else if (depth > 0 && letter === '"') quoted = true;
		else if (depth > 0 && letter === "}") {
			depth--;
			if (depth === 0) found.push(text.slice(begin, i + 1));
		}
	}
	if (depth > 0) found.push(text.slice(begin));
	return found;
}
