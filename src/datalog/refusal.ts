/** What is surely no log, told from the beginning of a file. */

/** Why a file cannot be read as a log. */
export type Refusal =
	| "empty"
	| "picture"
	| "pdf"
	/** A zip, which is also what spreadsheets are saved as, or another archive. */
	| "packed"
	| "binary"
	| "json"
	| "markup"
	| "oneColumn"
	| "tooWide"
	| "noNumbers"
	/** The phone would not give the file, or took it away while it was read. */
	| "unreadable";

/** Whether the phone would not give the file: moved, removed, changed, or locked (W3C File API, 7.1). */
export function isFileFault(error: unknown): boolean {
	const { name } = (error ?? {}) as { readonly name?: unknown };
	return name === "NotReadableError" || name === "NotFoundError";
}

/** First bytes of formats that are chosen by mistake. */
const signatures: readonly (readonly [Refusal, string])[] = [
	["picture", "89504e47"],
	["picture", "ffd8ff"],
	["picture", "47494638"],
	["picture", "52494646"],
	["pdf", "25504446"],
	["packed", "504b0304"],
	["packed", "504b0506"],
	["packed", "1f8b"],
	["packed", "377abcaf"],
	["packed", "52617221"],
	["packed", "d0cf11e0"],
];

/** Null where the bytes may be text. */
export function refusalOfBytes(head: Uint8Array, isUtf16: boolean): Refusal | null {
	if (head.length === 0) return "empty";
	const hex = Array.from(head.subarray(0, 8), (byte) => byte.toString(16).padStart(2, "0")).join("");
	const known = signatures.find(([, signature]) => hex.startsWith(signature));
	if (known) return known[0];
	return !isUtf16 && head.includes(0) ? "binary" : null;
}

/** Null where the text may be a log. */
export function refusalOfText(head: string): Refusal | null {
	const text = head.trimStart();
	if (text === "") return "empty";
	if (/^(\{\s*["}]|\[\s*["{[\d\]])/.test(text)) return "json";
	return /^<(\?xml|!doctype|!--|[a-z][\w:]*[\s/>])/i.test(text) ? "markup" : null;
}
