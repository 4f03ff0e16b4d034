import { version } from "../../pwa/version";
import { isInvented } from "../App";
import { useAppState } from "../app";
import { BackupCard } from "../components/BackupCard";
import { CalibrationList } from "../components/CalibrationList";
import { CarDetails } from "../components/CarDetails";
import { Choice, type Option } from "../components/Choice";
import { NotifyChoice } from "../components/NotifyChoice";
import { RemoveCar, RemoveInvented } from "../components/RemoveCar";
import type { Theme } from "../settings";
import { cautions } from "../text";

/** The car, its calibrations, and how the app behaves on this phone. */
export function CarScreen() {
	const { state } = useAppState();
	const { car, account } = state;
	if (!car) return null;
	const invented = isInvented(car.id);
	return (
		<>
			{invented && account && <RemoveInvented car={car} account={account} />}
			{state.cars.length > 1 && <Cars />}
			{account ? (
				<CalibrationList car={car} events={account.events} />
			) : (
				<p class="soft" role="status">
					Reading the log…
				</p>
			)}
			<section class="card" aria-label="The engine">
				<h2>The engine</h2>
				<a class="button wide" href="#/engine">
					What the blend does, and the fuel system
				</a>
			</section>
			<section class="card" aria-label="What the log tells">
				<h2>What the log tells</h2>
				<a class="button wide" href="#/places">
					Places and their pumps
				</a>
				<a class="button wide" href="#/costs">
					Costs and consumption
				</a>
				<a class="button wide" href="#/table">
					Table of mixes
				</a>
			</section>
			<CarDetails car={car} />
			<Display />
			<NotifyChoice />
			<BackupCard car={car} account={account} />
			{!invented && (
				<section class="card">
					<h2>Another car</h2>
					<a class="button wide" href="#/setup">
						Set up another car
					</a>
				</section>
			)}
			{!invented && account && <RemoveCar car={car} account={account} />}
			<details class="card">
				<summary>Cautions</summary>
				<ul class="cautions">
					{cautions.map((caution) => (
						<li key={caution}>{caution}</li>
					))}
				</ul>
			</details>
			<section class="card">
				<h2>About</h2>
				<p>
					Heeltap {version} keeps the account of the ethanol in a tank. What it says is an estimate. Your tuner’s limits
					come first.
				</p>
				<p>Nothing leaves this phone: no account, no network needed, nobody counts what you do.</p>
			</section>
		</>
	);
}

function Cars() {
	const { model, state } = useAppState();
	const { cars, car } = state;
	const options = cars.map(({ id, name }) => ({
		value: id,
		label: name,
		more: isInvented(id) ? "invented" : undefined,
	}));
	return (
		<section class="card">
			<Choice
				label="Which car?"
				options={options}
				value={car?.id ?? null}
				onChange={(activeCar) => model.saveSettings({ activeCar })}
			/>
		</section>
	);
}

const themes: readonly Option<Theme>[] = [
	{ value: "auto", label: "Follow the phone" },
	{ value: "light", label: "Light" },
	{ value: "dark", label: "Dark" },
	{ value: "sun", label: "Sun" },
];

function Display() {
	const { model, state } = useAppState();
	return (
		<section class="card">
			<h2>Display</h2>
			<Choice
				label="Light or dark"
				hint="“Sun” is black on white, and heavier."
				options={themes}
				value={state.settings.theme}
				onChange={(theme) => model.saveSettings({ theme })}
			/>
		</section>
	);
}
