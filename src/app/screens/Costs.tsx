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
import { costsWords } from "../words/costs";
import "./Costs.css";

const stopsAtOnce = 12;

/** What the fuel cost, what the ethanol in it cost, and how far it takes the car. */
export function CostsScreen() {
	const { state } = useAppState();
	const { car, events } = state;
	const costs = useMemo(() => (events ? costsOf(events) : null), [events]);
	const words = costsWords();
	if (!car || !events || !costs) return <p class="soft">{words.opening}</p>;
	if (costs.stops.length === 0) {
		return (
			<div class="card">
				<h2>{words.none}</h2>
				<p>{words.noneMore}</p>
				<a class="button main" href="#/fill">
					{words.record}
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
			<section class="card" aria-label={words.consumption}>
				<h2>{words.consumption}</h2>
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
	const words = costsWords();
	const missing = unpricedWords(all);
	if (all.unpriced === all.fills) {
		return (
			<section class="card" aria-label={words.bought}>
				<h2>{words.bought}</h2>
				<p class="fault">{missing}</p>
				<p>{words.enterPrice}</p>
			</section>
		);
	}
	return (
		<section class="card" aria-label={words.bought}>
			<h2>{words.bought}</h2>
			<dl class="figures amounts">
				<div>
					<dt>{monthName(latest.month)}</dt>
					<dd class="number">{latest.unpriced === latest.fills ? words.notKnown : money(latest.cost, currency)}</dd>
				</div>
				<div>
					<dt>{words.inAll}</dt>
					<dd class="number">{money(all.cost, currency)}</dd>
				</div>
			</dl>
			{missing && <p class="fault">{missing}</p>}
			{currency === undefined && (
				<p class="small">
					{words.plainNumbers} <a href="#/car">{words.chooseCurrency}</a>.
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
	const words = costsWords();
	const last = stops.findLast(({ ethanol }) => ethanol !== null);
	return (
		<section class="card" aria-label={words.ethanol}>
			<h2>{words.ethanol}</h2>
			<p>{ethanolWords(all, currency)}</p>
			{all.ethanol && (
				<DoubtBar
					from={all.ethanol.least}
					to={all.ethanol.most}
					mark={all.ethanol.extra}
					before={words.cheaper}
					after={words.dearer}
				/>
			)}
			{last?.ethanol && (
				<p class="small">
					{words.lastStop(
						dateTime(last.at),
						comparedWords(last.ethanol.extra, currency),
						againstWords(last.ethanol, unit, currency),
					)}
				</p>
			)}
			<p class="small soft">{words.heatOnly}</p>
		</section>
	);
}

interface DistanceProps {
	readonly events: Parameters<typeof distanceCostOf>[0];
	readonly car: Car;
	readonly unit: VolumeUnit;
}

function DistanceCard({ events, car, unit }: DistanceProps) {
	const words = costsWords();
	const cost = useMemo(() => distanceCostOf(events, car.tank), [events, car.tank]);
	return (
		<section class="card" aria-label={words.distance}>
			<h2>{words.distance}</h2>
			{"code" in cost ? (
				<p>{noDistanceCostWords(cost)}</p>
			) : (
				<>
					<dl class="figures amounts">
						<div>
							<dt>{words.perDistance(costDistance(unit).words)}</dt>
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
	const words = costsWords();
	return (
		<section class="card" aria-label={words.stops}>
			<h2>{words.stops}</h2>
			<ul class="coststops">
				{stops
					.slice(-shown)
					.reverse()
					.map((stop) => (
						<li key={stop.stop}>
							<a href={printRoute({ screen: "entry", id: stop.fills[0].id })}>
								<span class="small soft">{words.at(dateTime(stop.at), stop.place)}</span>
								<span class="pair">
									<span>{volume(stop.litres, unit)}</span>
									<strong class="number">{stopCostWords(stop, currency)}</strong>
								</span>
								{stop.ethanol && (
									<span class="small">
										{words.stopCompared(
											comparedWords(stop.ethanol.extra, currency),
											extraRange(stop.ethanol, currency),
										)}
									</span>
								)}
							</a>
						</li>
					))}
			</ul>
			{left > 0 && (
				<button type="button" class="button wide" onClick={() => setShown(shown + stopsAtOnce)}>
					{words.olderStops(left)}
				</button>
			)}
		</section>
	);
}
