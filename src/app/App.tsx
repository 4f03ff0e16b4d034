import { useEffect, useState } from "preact/hooks";
import { useAppState } from "./app";
import { ToastList } from "./components/ToastList";
import type { Failure } from "./failure";
import { later } from "./later";
import { isAmiss } from "./notices";
import { parseRoute, printRoute, type Route } from "./route";
import { TankScreen } from "./screens/Tank";
import { shellWords } from "./words/shell";
import { storageWords } from "./words/storage";

const FillScreen = later(async () => (await import("./screens/Fill")).FillScreen);
const PlanScreen = later(async () => (await import("./screens/Plan")).PlanScreen);
const LogScreen = later(async () => (await import("./screens/Log")).LogScreen);
const EntryScreen = later(async () => (await import("./screens/Entry")).EntryScreen);
const CarScreen = later(async () => (await import("./screens/Car")).CarScreen);
const CalibrationScreen = later(async () => (await import("./screens/Calibration")).CalibrationScreen);
const CostsScreen = later(async () => (await import("./screens/Costs")).CostsScreen);
const PlacesScreen = later(async () => (await import("./screens/Places")).PlacesScreen);
const PlaceScreen = later(async () => (await import("./screens/Place")).PlaceScreen);
const MixTableScreen = later(async () => (await import("./screens/MixTable")).MixTableScreen);
const ReadingsScreen = later(async () => (await import("./screens/Readings")).ReadingsScreen);
const DataLogScreen = later(async () => (await import("./screens/DataLog")).DataLogScreen);
const EngineScreen = later(async () => (await import("./screens/Engine")).EngineScreen);
const WhyScreen = later(async () => (await import("./screens/Why")).WhyScreen);
const DoubtScreen = later(async () => (await import("./screens/Doubt")).DoubtScreen);
const WatchedScreen = later(async () => (await import("./screens/Watched")).WatchedScreen);
const SharedScreen = later(async () => (await import("./screens/Shared")).SharedScreen);
const Notices = later(async () => (await import("./components/Notices")).Notices);
const SetupScreen = later(async () => (await import("./screens/Setup")).SetupScreen);

export function Main() {
	const { state, toasts, now } = useAppState();
	const route = useRoute();
	useTheme(state.settings.theme);
	const { car, phase, failure } = state;
	// Cards, reports and what other phones hand over need no car.
	const carless =
		route.screen === "card" || route.screen === "take" || route.screen === "live" || route.screen === "reports";
	const setup = phase === "ready" && (route.screen === "setup" || !(car || carless));
	return (
		<>
			<header class="top">
				<div class="inner">
					<h1>{setup ? "Heeltap" : (car?.name ?? "Heeltap")}</h1>
					{car && isInvented(car.id) && !setup && <span class="invented">{shellWords().invented}</span>}
				</div>
			</header>
			<ToastList toasts={toasts} />
			<main class="page" data-screen={setup ? "setup" : route.screen}>
				{failure && <FailureCard failure={failure} />}
				{phase !== "opening" && isAmiss(state, now()) && <Notices />}
				{phase === "opening" ? (
					<p class="soft">{shellWords().opening}</p>
				) : setup ? (
					<SetupScreen key="setup" />
				) : (
					(car || carless) && <Screen key={`${!carless && car?.id} ${printRoute(route)}`} route={route} />
				)}
			</main>
			{!setup && car && <Tabs current={route.screen} />}
		</>
	);
}

/** The demonstration car's id says what it is, wherever its log goes. */
export function isInvented(carId: string): boolean {
	return carId.startsWith("invented-");
}

function Screen({ route }: { readonly route: Route }) {
	switch (route.screen) {
		case "fill":
			return <FillScreen correcting={null} />;
		case "correct":
			return <FillScreen correcting={route.id} />;
		case "plan":
			return <PlanScreen />;
		case "log":
			return <LogScreen />;
		case "entry":
			return <EntryScreen id={route.id} />;
		case "car":
			return <CarScreen />;
		case "costs":
			return <CostsScreen />;
		case "places":
			return <PlacesScreen />;
		case "place":
			return <PlaceScreen name={route.id} />;
		case "table":
			return <MixTableScreen />;
		case "calibration":
			return <CalibrationScreen id={route.id} />;
		case "measure":
			return <ReadingsScreen kind={route.id} />;
		case "datalog":
			return <DataLogScreen />;
		case "engine":
			return <EngineScreen />;
		case "doubt":
			return <DoubtScreen id={route.id} />;
		case "why":
			return <WhyScreen />;
		case "card":
		case "take":
		case "hand":
		case "live":
			return <SharedScreen {...route} />;
		case "report":
		case "cars":
		case "reports":
			return <WatchedScreen {...route} />;
		default:
			return <TankScreen />;
	}
}

function FailureCard({ failure: { text, unwritten } }: { readonly failure: Failure }) {
	return (
		<div class="card" role="alert">
			<p class="fault">{text}</p>
			{!unwritten && (
				<button type="button" class="button" onClick={() => location.reload()}>
					{storageWords().reload}
				</button>
			)}
		</div>
	);
}

const tabs: readonly { screen: "tank" | "fill" | "log" | "car"; icon: string }[] = [
	{ screen: "tank", icon: "M5 4v22h18V4M9 21h0M14 21h0M19 21h0M14 16h0M9 16h0M14 11h0" },
	{ screen: "fill", icon: "M14 4v20M4 14h20" },
	{ screen: "log", icon: "M4 7h20M4 14h20M4 21h12" },
	{ screen: "car", icon: "M4 19v-5l3-7h14l3 7v5zM8 19v3M20 19v3M4 14h20" },
];

const parents: Readonly<Record<string, string>> = {
	plan: "fill",
	correct: "log",
	entry: "log",
	calibration: "car",
	costs: "car",
	places: "car",
	place: "car",
	table: "tank",
	measure: "tank",
	datalog: "tank",
	engine: "car",
	why: "tank",
	doubt: "tank",
	card: "car",
	take: "car",
	hand: "car",
	live: "car",
	report: "tank",
	cars: "car",
	reports: "car",
};

function Tabs({ current }: { readonly current: string }) {
	const { screens, tabs: labels } = shellWords();
	return (
		<nav class="tabs" aria-label={screens}>
			<ul>
				{tabs.map(({ screen, icon }) => (
					<li key={screen}>
						<a href={`#/${screen}`} aria-current={(parents[current] ?? current) === screen ? "page" : undefined}>
							<svg viewBox="0 0 28 28" aria-hidden="true">
								<path
									d={icon}
									fill="none"
									stroke="currentColor"
									stroke-width="3"
									stroke-linecap="round"
									stroke-linejoin="round"
								/>
							</svg>
							{labels[screen]}
						</a>
					</li>
				))}
			</ul>
		</nav>
	);
}

function useRoute(): Route {
	const [hash, setHash] = useState(location.hash);
	useEffect(() => {
		const follow = () => {
			setHash(location.hash);
			window.scrollTo(0, 0);
		};
		window.addEventListener("hashchange", follow);
		// It may have changed between the drawing and this.
		setHash(location.hash);
		return () => window.removeEventListener("hashchange", follow);
	}, []);
	return parseRoute(hash);
}

function useTheme(theme: string): void {
	useEffect(() => {
		document.documentElement.dataset.theme = theme;
	}, [theme]);
}
