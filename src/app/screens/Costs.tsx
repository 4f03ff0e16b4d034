import { useMemo, useState } from "preact/hooks";
import { type Costs, costsOf, type StopCost } from "../../domain/cost";
import { distanceCostOf } from "../../domain/distanceCost";
import type { VolumeUnit } from "../../domain/units";
import type { Car } from "../../domain/vehicle";
import { useAppState } from "../app";
import { DoubtBar } from "../components/DoubtBar";
import { MonthBars } from "../components/MonthBars";
import { RunningFacts } from "../components/RunningFacts";
import {
	againstWords,
	comparedWords,
	distanceCostWords,
	ethanolWords,
	extraRange,
	monthName,
	noDistanceCostWords,
	stopCostWords,
	unpricedWords,
} from "../costWords";
import { dateTime, volume } from "../format";
import { unitOf } from "../model";
import { costDistance, distanceMoney, money } from "../money";
import { printRoute } from "../route";
import "./Costs.css";

const stopsAtOnce = 12;

/** What the fuel cost, what the ethanol in it cost, and how far it takes the car. */
export function CostsScreen() {
	const { state } = useAppState();
	const { car, events } = state;
	const costs = useMemo(() => (events ? costsOf(events) : null), [events]);
	if (!car || !events || !costs) return <p class="soft">Opening the log…</p>;
	if (costs.stops.length === 0) {
		return (
			<div class="card">
				<h2>No fuel is in the log yet</h2>
				<p>Record a fill with its price and the odometer, and what it cost is told here.</p>
				<a class="button main" href="#/fill">
					Record a fill
				</a>
			</div>
		);
	}
	const unit = unitOf(state);
	return (
		<>
			<Spent costs={costs} car={car} />
			<EthanolCard costs={costs} car={car} unit={unit} />
			<DistanceCard events={events} car={car} unit={unit} />
			<section class="card" aria-label="Consumption and range">
				<h2>Consumption and range</h2>
				<RunningFacts />
			</section>
			<Stops stops={costs.stops} car={car} unit={unit} />
		</>
	);
}

interface SpentProps {
	readonly costs: Costs;
	readonly car: Car;
}

function Spent({ costs, car: { currency } }: SpentProps) {
	const { months, all } = costs;
	const [latest] = months.slice(-1);
	const missing = unpricedWords(all);
	if (all.unpriced === all.fills) {
		return (
			<section class="card" aria-label="Fuel bought">
				<h2>Fuel bought</h2>
				<p class="fault">{missing}</p>
				<p>Type the price in with the next fill: every litre that has one counts here.</p>
			</section>
		);
	}
	return (
		<section class="card" aria-label="Fuel bought">
			<h2>Fuel bought</h2>
			<dl class="figures amounts">
				<div>
					<dt>{monthName(latest.month)}</dt>
					<dd class="number">{latest.unpriced === latest.fills ? "not known" : money(latest.cost, currency)}</dd>
				</div>
				<div>
					<dt>In all</dt>
					<dd class="number">{money(all.cost, currency)}</dd>
				</div>
			</dl>
			{missing && <p class="fault">{missing}</p>}
			{currency === undefined && (
				<p class="small">
					Amounts are plain numbers, because no currency is chosen. <a href="#/car">Choose it under Car</a>.
				</p>
			)}
			<MonthBars months={months} currency={currency} />
		</section>
	);
}

interface CardProps extends SpentProps {
	readonly unit: VolumeUnit;
}

function EthanolCard({ costs: { all, stops }, car: { currency }, unit }: CardProps) {
	const last = stops.findLast(({ ethanol }) => ethanol !== null);
	return (
		<section class="card" aria-label="What the ethanol cost">
			<h2>What the ethanol cost</h2>
			<p>{ethanolWords(all, currency)}</p>
			{all.ethanol && (
				<DoubtBar
					from={all.ethanol.least}
					to={all.ethanol.most}
					mark={all.ethanol.extra}
					before="cheaper than gasoline"
					after="dearer"
				/>
			)}
			{last?.ethanol && (
				<p class="small">
					At the last such stop, {dateTime(last.at)}, the blend cost {comparedWords(last.ethanol.extra, currency)} its
					heat bought as {againstWords(last.ethanol, unit, currency)}.
				</p>
			)}
			<p class="small soft">
				A litre of ethanol holds a third less heat than one of gasoline. Only heat is compared here, by the middles of
				the labels; what the engine makes of it is another matter.
			</p>
		</section>
	);
}

interface DistanceProps {
	readonly events: Parameters<typeof distanceCostOf>[0];
	readonly car: Car;
	readonly unit: VolumeUnit;
}

function DistanceCard({ events, car, unit }: DistanceProps) {
	const cost = useMemo(() => distanceCostOf(events, car.tank), [events, car.tank]);
	return (
		<section class="card" aria-label="What the distance cost">
			<h2>What the distance cost</h2>
			{"code" in cost ? (
				<p>{noDistanceCostWords(cost)}</p>
			) : (
				<>
					<dl class="figures amounts">
						<div>
							<dt>Per {costDistance(unit).words}, about</dt>
							<dd class="number">{distanceMoney(cost.perKm, unit, car.currency)}</dd>
						</div>
					</dl>
					<p class="small">{distanceCostWords(cost, unit, car.currency)}</p>
				</>
			)}
		</section>
	);
}

interface StopsProps {
	readonly stops: readonly StopCost[];
	readonly car: Car;
	readonly unit: VolumeUnit;
}

function Stops({ stops, car: { currency }, unit }: StopsProps) {
	const [shown, setShown] = useState(stopsAtOnce);
	const left = stops.length - shown;
	return (
		<section class="card" aria-label="Stop by stop">
			<h2>Stop by stop</h2>
			<ul class="coststops">
				{stops
					.slice(-shown)
					.reverse()
					.map((stop) => (
						<li key={stop.stop}>
							<a href={printRoute({ screen: "entry", id: stop.fills[0].id })}>
								<span class="small soft">
									{dateTime(stop.at)}
									{stop.place !== null && `, ${stop.place}`}
								</span>
								<span class="pair">
									<span>{volume(stop.litres, unit)}</span>
									<strong class="number">{stopCostWords(stop, currency)}</strong>
								</span>
								{stop.ethanol && (
									<span class="small">
										{comparedWords(stop.ethanol.extra, currency)} its heat as gasoline (
										{extraRange(stop.ethanol, currency)})
									</span>
								)}
							</a>
						</li>
					))}
			</ul>
			{left > 0 && (
				<button type="button" class="button wide" onClick={() => setShown(shown + stopsAtOnce)}>
					Older stops ({left})
				</button>
			)}
		</section>
	);
}
