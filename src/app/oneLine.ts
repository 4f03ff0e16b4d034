/** What was typed or pasted as a name, without characters that the log does not take in one: they become blanks. */
export function oneLine(typed: string): string {
	return typed.replace(/[\p{Control}\u202a-\u202e\u2066-\u2069]/gu, " ");
}
