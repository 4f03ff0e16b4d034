import type { Running, Spread } from "../../domain/running";
import { litresPer } from "../../domain/units";
import { isoWithOffset, useAppState } from "../app";
import { distanceUnit, fromKm, kmPerMile } from "../format";
import { type Formatter, numbers, tenth } from "../formatters";
import { unitOf } from "../model";
import { useMoment } from "../moment";
import { useAnswer } from "../useAnswer";
import { runningWords } from "../words/running";
import { Facts } from "./Facts";

/** What the car burns and how far the fuel goes, as learned from the odometer. */
export function RunningFacts() {
	const { model, state } = useAppState();
	const opened = useMoment(state.events);
	const { car, account } = state;
	const key = car && account ? JSON.stringify([car, account.count]) : null;
	const { answer, failed } = useAnswer(key, () => model.running(car?.id ?? "", isoWithOffset(opened)));
	const words = runningWords();
	if (failed) return <p class="fault">{words.failed}</p>;
	if (answer === undefined) return <p class="soft">{words.reckoning}</p>;
	if (answer === null) return <p>{words.unknown}</p>;
	return <Learned running={answer} unit={unitOf(state)} />;
}

interface LearnedProps {
	readonly running: Running;
	readonly unit: ReturnType<typeof unitOf>;
}

function Learned({ running: { litresPer100Km, rangeKm }, unit }: LearnedProps) {
	const miles = distanceUnit(unit) === "mi";
	const distance = spread(rangeKm, (km) => fromKm(km, unit), whole);
	// More miles a gallon is less fuel: the ends change places.
	const perGallon = (litres: number) => (100 * litresPer[unit]) / kmPerMile / litres;
	const { median, low, high } = litresPer100Km;
	const burned = miles
		? spread({ median, low: high, high: low }, perGallon, tenth)
		: spread(litresPer100Km, (litres) => litres, tenth);
	const words = runningWords();
	const per = miles ? words.milesPer(unit) : words.litresPer;
	return (
		<>
			<Facts
				facts={[
					{ term: miles ? words.goes : words.burns, is: words.about(burned.median, per, burned.range) },
					{
						term: words.untilEmpty,
						is: words.about(distance.median, distanceUnit(unit), distance.range),
					},
				]}
			/>
			<p class="small soft">{words.learned}</p>
		</>
	);
}

const whole = numbers({ maximumSignificantDigits: 2 });

function spread({ median, low, high }: Spread, convert: (value: number) => number, format: Formatter<number>) {
	const [middle, from, to] = [median, low, high].map((value) => format.format(convert(value)));
	return { median: middle, range: `${from}–${to}` };
}
