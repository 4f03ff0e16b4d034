import { useEffect } from "preact/hooks";
import { aboutOf, checkedKey } from "../../keeper/glance";
import type { Contradiction } from "../../keeper/view";
import { useAppState } from "../app";
import { lookAtFleet } from "../fleetWatch";
import { doubtWords } from "../words/doubt";

/** "I checked": what is odd counts no more outside its own screens, until a new entry makes another question of it. */
export function CheckedCard({ contradiction }: { readonly contradiction: Contradiction }) {
	const { model, state, now } = useAppState();
	const words = doubtWords();
	const carId = state.car?.id ?? "";
	const checked = state.fleet?.cars.some((car) => car.carId === carId && car.checked);
	useEffect(() => {
		if (!state.fleet) lookAtFleet(model, now()).catch(() => {});
	}, []);
	async function check(): Promise<void> {
		await model.saveDraft(checkedKey(carId), aboutOf(contradiction.entries));
		await lookAtFleet(model, now());
	}
	return (
		<section class="card" aria-label={words.checkTitle}>
			<h2>{words.checkTitle}</h2>
			{checked ? (
				<p role="status">{words.checked}</p>
			) : (
				<>
					<p>{words.checkAbout}</p>
					<button type="button" class="button wide" onClick={check}>
						{words.check}
					</button>
				</>
			)}
		</section>
	);
}
