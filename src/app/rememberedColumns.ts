/** What the driver has said of a logger's columns, remembered for every file with the same headers. */
import { type Column, type Columns, unitsOf } from "../domain/datalog/role";

/** Under this it is in the store. */
export const columnsKey = "data log columns";

interface Remembered {
	/** Sorted: the order of columns changes with what is logged first. */
	readonly headers: readonly string[];
	readonly columns: Readonly<Record<string, Column>>;
}

/** Loggers that are remembered, the one used last first. */
const most = 20;

/** The columns as the driver has told them for these headers; null where nobody has. */
export function recalled(stored: unknown, headers: readonly string[]): Columns | null {
	const found = listIn(stored).find((known) => isSame(known.headers, headers));
	return found ? headers.map((header) => (Object.hasOwn(found.columns, header) ? found.columns[header] : null)) : null;
}

/** What to store instead, these headers' columns in front. */
export function remembering(stored: unknown, headers: readonly string[], columns: Columns): readonly Remembered[] {
	const others = listIn(stored).filter((known) => !isSame(known.headers, headers));
	const told = headers.flatMap((header, i) => {
		const column = columns[i];
		return column ? [[header, column] as const] : [];
	});
	return [{ headers: [...headers].sort(), columns: Object.fromEntries(told) }, ...others].slice(0, most);
}

function listIn(stored: unknown): readonly Remembered[] {
	return Array.isArray(stored) ? stored.filter(isRemembered) : [];
}

function isRemembered(entry: unknown): entry is Remembered {
	const { headers, columns } = (entry ?? {}) as Partial<Remembered>;
	return Array.isArray(headers) && typeof columns === "object" && Object.values(columns).every(isColumn);
}

/** A newer version of the app may know more roles. */
function isColumn(column: Column): boolean {
	const { role, unit } = column ?? {};
	return Object.hasOwn(unitsOf, role) && (unit === null || unitsOf[role].includes(unit));
}

function isSame(sorted: readonly string[], headers: readonly string[]): boolean {
	return JSON.stringify(sorted) === JSON.stringify([...headers].sort());
}
