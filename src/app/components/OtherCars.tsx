import { useAppState } from "../app";
import { carsWords } from "../words/cars";

/** A small line on the Tank screen, where another car of this phone needs attention. */
export function OtherCars() {
	const { fleet, car } = useAppState().state;
	const count = fleet?.over.filter((carId) => carId !== car?.id).length ?? 0;
	if (count === 0) return null;
	return (
		<a class="button wide" href="#/cars">
			{carsWords().others(count)}
		</a>
	);
}
