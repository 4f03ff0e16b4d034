/** Whether two values that JSON can hold are the same, whatever the order of their names. */
export function sameContents(a: unknown, b: unknown): boolean {
	if (a === b) return true;
	if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) return false;
	if (Array.isArray(a) !== Array.isArray(b)) return false;
	const entries = Object.entries(a);
	return (
		entries.length === Object.keys(b).length &&
		entries.every(
			([name, inner]) => Object.hasOwn(b, name) && sameContents(inner, (b as Record<string, unknown>)[name]),
		)
	);
}
