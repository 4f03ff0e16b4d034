import { useEffect, useState } from "preact/hooks";
import { isInvented } from "../App";
import { useAppState } from "../app";
import { CarRow } from "../components/CarRow";
import { lookAtFleet } from "../fleetWatch";
import { carsWords } from "../words/cars";

/** All cars of this phone, what needs attention first: as they were last reckoned, so that it opens at once. */
export function CarsScreen({ id }: { readonly id: string | null }) {
	const { model, state, now } = useAppState();
	const [opened] = useState(now());
	const words = carsWords();
	const { fleet, car } = state;
	const known = state.cars.some((each) => each.id === id);
	useEffect(() => {
		// A tap on a warning leads to its car.
		// Back must not open it again.
		if (id !== null && known) open(id, () => location.replace("#/tank"));
	}, [id, known]);
	useEffect(() => {
		// What fails is told above the screen, and the watch looks again.
		lookAtFleet(model, opened).catch(() => {});
	}, []);
	async function open(carId: string, go: () => void): Promise<void> {
		// Null: it failed, which is told above the screen, and the tank would be that of another car.
		if (carId !== car?.id && (await model.saveSettings({ activeCar: carId })) === null) return;
		go();
	}
	const coming = fleet?.cars.filter(({ current, failed }) => !current && !failed).length ?? 0;
	return (
		<>
			<section class="card">
				<h2>{words.title}</h2>
				{fleet ? (
					<>
						<p role="status">
							<strong>{words.over(fleet.over.length, fleet.cars.length)}</strong>
							{coming > 0 && ` ${words.reckoning(coming)}`}
						</p>
						<p class="small soft">{words.about}</p>
					</>
				) : (
					<p class="soft" role="status">
						{words.looking}
					</p>
				)}
			</section>
			{fleet && (
				<ul class="carlist" aria-label={words.list}>
					{fleet.cars.map((each) => (
						<CarRow
							key={each.carId}
							car={each}
							now={opened}
							mark={markOf(each.carId, car?.id)}
							onOpen={() =>
								open(each.carId, () => {
									location.hash = "#/tank";
								})
							}
						/>
					))}
				</ul>
			)}
			<a class="button wide" href="#/reports">
				{words.openReports}
			</a>
		</>
	);
}

function markOf(carId: string, onScreen: string | undefined): string | undefined {
	const words = carsWords();
	if (isInvented(carId)) return words.invented;
	return carId === onScreen ? words.onScreen : undefined;
}
