import { useState } from "preact/hooks";
import type { Running, Spread } from "../../domain/running";
import { litresPer } from "../../domain/units";
import { isoWithOffset, useAppState } from "../app";
import { distanceUnit, fromKm, kmPerMile } from "../format";
import { unitOf } from "../model";
import { useAnswer } from "../useAnswer";
import { Facts } from "./Facts";

/** What the car burns and how far the fuel goes, as learned from the odometer. */
export function RunningFacts() {
	const { model, state, now } = useAppState();
	const [opened] = useState(now());
	const { car, account } = state;
	const key = car && account ? JSON.stringify([car, account.count]) : null;
	const { answer, failed } = useAnswer(key, () => model.running(car?.id ?? "", isoWithOffset(opened)));
	if (failed) return <p class="fault">What the car burns could not be reckoned. Reload the app and try again.</p>;
	if (answer === undefined) return <p class="soft">Reckoning what the car burns…</p>;
	if (answer === null) {
		return <p>What the car burns is learned from the odometer at two stops. Enter it with the next fills.</p>;
	}
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
	const per = miles ? `miles per ${unit}` : "L/100 km";
	return (
		<>
			<Facts
				facts={[
					{ term: miles ? "It goes" : "It burns", is: `about ${burned.median} ${per}, 9 in 10: ${burned.range}` },
					{
						term: "Until empty",
						is: `about ${distance.median} ${distanceUnit(unit)}, 9 in 10: ${distance.range}`,
					},
				]}
			/>
			<p class="small soft">
				Learned from odometer and fills, for the blend now in the tank. The way until empty counts from the last entry;
				the gauge comes first, and a reserve belongs on top.
			</p>
		</>
	);
}

const whole = new Intl.NumberFormat(undefined, { maximumSignificantDigits: 2 });
const tenth = new Intl.NumberFormat(undefined, { minimumFractionDigits: 1, maximumFractionDigits: 1 });

function spread({ median, low, high }: Spread, convert: (value: number) => number, format: Intl.NumberFormat) {
	const [middle, from, to] = [median, low, high].map((value) => format.format(convert(value)));
	return { median: middle, range: `${from}–${to}` };
}
