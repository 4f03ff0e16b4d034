import { later } from "../later";
import type { Route } from "../route";

const ReportScreen = later(async () => (await import("./Report")).ReportScreen);
const CarsScreen = later(async () => (await import("./Cars")).CarsScreen);
const ReportsScreen = later(async () => (await import("./Reports")).ReportsScreen);

/** What tuners and owners watch: one way in, so that the first load carries one address. */
export function WatchedScreen(route: Extract<Route, { screen: "report" | "cars" | "reports" }>) {
	if (route.screen === "report") return <ReportScreen />;
	return route.screen === "cars" ? <CarsScreen id={route.id} /> : <ReportsScreen />;
}
