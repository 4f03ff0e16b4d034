/** Whether two accounts or beliefs are the same to the last bit: comparing them number by number takes minutes. */
import { createHash } from "node:crypto";

/** A digest of everything a value holds. */
export function bitsOf(value: unknown): string {
	const plain = JSON.stringify(value, (_key, part) => {
		if (part instanceof Map || part instanceof Set) return [...part];
		return ArrayBuffer.isView(part) ? Buffer.from(part.buffer).toString("base64") : part;
	});
	return createHash("sha256").update(plain).digest("hex");
}
