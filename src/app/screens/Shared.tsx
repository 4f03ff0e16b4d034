import { later } from "../later";
import type { Route } from "../route";

const CardScreen = later(async () => (await import("./Card")).CardScreen);
const TakeScreen = later(async () => (await import("./Take")).TakeScreen);
const LiveScreen = later(async () => (await import("./Live")).LiveScreen);
const HandScreen = later(async () => (await import("./Hand")).HandScreen);

/** What comes from elsewhere or goes there: one way in, so that the first load carries one address. */
export function SharedScreen({ screen, id }: Extract<Route, { screen: "card" | "take" | "hand" | "live" }>) {
	if (screen === "card") return <CardScreen id={id} />;
	if (screen === "live") return <LiveScreen id={id} />;
	return screen === "take" ? <TakeScreen id={id} /> : <HandScreen id={id} />;
}
