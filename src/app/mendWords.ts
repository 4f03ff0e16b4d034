/** What to add, as a sentence. */
import type { VolumeUnit } from "../domain/units";
import type { Mend } from "../keeper/view";
import { volume, volumeRange } from "./format";
import { productName } from "./text";

export function mendWords(mend: Mend | null, unit: VolumeUnit): string | null {
	if (!mend) return null;
	const name = productName(mend.product);
	if (!mend.between)
		return `No amount of “${name}” that fits the tank would bring it inside: drive first, gently, then add some.`;
	const [from, to] = mend.between;
	if (to - from < 0.5) return `What would mend it: about ${volume(from, unit)} of “${name}”, if added now.`;
	return `What would mend it: ${volumeRange(from, to, unit)} of “${name}”, if added now.`;
}
