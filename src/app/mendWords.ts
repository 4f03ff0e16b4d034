/** What to add, as a sentence. */
import type { VolumeUnit } from "../domain/units";
import type { Mend } from "../keeper/view";
import { inTwenty, volume, volumeRange } from "./format";
import { productName } from "./text";
import { eventsWords } from "./words/events";

export function mendWords(mend: Mend | null, unit: VolumeUnit): string | null {
	if (!mend) return null;
	const words = eventsWords();
	const name = productName(mend.product);
	if (mend.between) {
		const [from, to] = mend.between;
		const amount = to - from < 0.5 ? words.about(volume(from, unit)) : volumeRange(from, to, unit);
		return words.mend(amount, name);
	}
	if (!mend.best) return words.noMend(name);
	const { amount, inside } = mend.best;
	return words.help(volume(amount, unit), name, inTwenty(inside));
}
