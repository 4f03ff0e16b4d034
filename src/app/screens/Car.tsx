import { version } from "../../pwa/version";
import { isInvented } from "../App";
import { useAppState } from "../app";
import { BackupCard } from "../components/BackupCard";
import { CalibrationList } from "../components/CalibrationList";
import { CarDetails } from "../components/CarDetails";
import { Cautions } from "../components/Cautions";
import { Choice } from "../components/Choice";
import { LanguageChoice } from "../components/LanguageChoice";
import { NotifyChoice } from "../components/NotifyChoice";
import { OtherPhones } from "../components/OtherPhones";
import { RemoveCar, RemoveInvented } from "../components/RemoveCar";
import type { Theme } from "../settings";
import { carWords } from "../words/car";
import { cautionsWords } from "../words/cautions";

/** The car, its calibrations, and how the app behaves on this phone. */
export function CarScreen() {
	const { state } = useAppState();
	const { car, account } = state;
	if (!car) return null;
	const invented = isInvented(car.id);
	const words = carWords();
	return (
		<>
			{invented && account && <RemoveInvented car={car} account={account} />}
			{state.cars.length > 1 && <Cars />}
			{account ? (
				<CalibrationList car={car} events={account.events} />
			) : (
				<p class="soft" role="status">
					{words.reading}
				</p>
			)}
			<section class="card" aria-label={words.engine}>
				<h2>{words.engine}</h2>
				<a class="button wide" href="#/engine">
					{words.toEngine}
				</a>
			</section>
			<section class="card" aria-label={words.tells}>
				<h2>{words.tells}</h2>
				<a class="button wide" href="#/report">
					{words.toReport}
				</a>
				<a class="button wide" href="#/places">
					{words.toPlaces}
				</a>
				<a class="button wide" href="#/costs">
					{words.toCosts}
				</a>
				<a class="button wide" href="#/table">
					{words.toTable}
				</a>
			</section>
			<OtherPhones />
			<section class="card" aria-label={words.toReports}>
				<a class="button wide" href="#/reports">
					{words.toReports}
				</a>
			</section>
			<CarDetails car={car} />
			<Display />
			<LanguageChoice />
			<NotifyChoice />
			<BackupCard car={car} account={account} />
			{!invented && (
				<section class="card">
					<h2>{words.another}</h2>
					<a class="button wide" href="#/setup">
						{words.setUpAnother}
					</a>
				</section>
			)}
			{!invented && account && <RemoveCar car={car} account={account} />}
			<details class="card">
				<summary>{cautionsWords().title}</summary>
				<Cautions />
			</details>
			<section class="card">
				<h2>{words.about}</h2>
				<p>{words.aboutApp(version)}</p>
				<p>{state.settings.live ? words.privacyLive : words.privacy}</p>
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
		more: isInvented(id) ? carWords().invented : undefined,
	}));
	return (
		<section class="card">
			<Choice
				label={carWords().whichCar}
				options={options}
				value={car?.id ?? null}
				onChange={(activeCar) => model.saveSettings({ activeCar })}
			/>
			<a class="button wide" href="#/cars">
				{carWords().toCars}
			</a>
		</section>
	);
}

const themes: readonly Theme[] = ["auto", "light", "dark", "sun"];

function Display() {
	const { model, state } = useAppState();
	const words = carWords();
	return (
		<section class="card">
			<h2>{words.display}</h2>
			<Choice
				label={words.lightOrDark}
				hint={words.sunHint}
				options={themes.map((value) => ({ value, label: words.themes[value] }))}
				value={state.settings.theme}
				onChange={(theme) => model.saveSettings({ theme })}
			/>
		</section>
	);
}
