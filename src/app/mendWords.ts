/** What to add, as a sentence. */
import type { VolumeUnit } from "../domain/units";
import type { Mend } from "../keeper/view";
import { inTwenty, volume, volumeRange } from "./format";
import { productName } from "./text";

export function mendWords(mend: Mend | null, unit: VolumeUnit): string | null {
	if (!mend) return null;
	const name = productName(mend.product);
	if (mend.between) {
		const [from, to] = mend.between;
		const amount = to - from < 0.5 ? `about ${volume(from, unit)}` : volumeRange(from, to, unit);
		return `What would mend it: ${amount} of “${name}”, if added before driving on.`;
	}
	if (!mend.best) return `No amount of “${name}” that fits the tank would help: burn some first, out of boost.`;
	const { amount, inside } = mend.best;
	return `What would help, not cure: about ${volume(amount, unit)} of “${name}”, if added before driving on. Inside would then be ${inTwenty(inside)}.`;
}
