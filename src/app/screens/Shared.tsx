import { later } from "../later";
import type { Route } from "../route";

const CardScreen = later(async () => (await import("./Card")).CardScreen);
const TakeScreen = later(async () => (await import("./Take")).TakeScreen);
const HandScreen = later(async () => (await import("./Hand")).HandScreen);

/** What comes from elsewhere or goes there: one way in, so that the first load carries one address. */
export function SharedScreen({ screen, id }: Extract<Route, { screen: "card" | "take" | "hand" }>) {
	if (screen === "card") return <CardScreen id={id} />;
	return screen === "take" ? <TakeScreen id={id} /> : <HandScreen id={id} />;
}
