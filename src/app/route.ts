/** Screens by the fragment of the address. */
export type Route =
	| { readonly screen: "tank" | "fill" | "log" | "car" | "setup" | "plan" | "places" | "table" | "costs" | "datalog" }
	| { readonly screen: "engine" | "why" }
	/** The tank report, and reports of others. */
	| { readonly screen: "report" | "reports" }
	/** All of them, or the one that was told of. */
	| { readonly screen: "cars"; readonly id: string | null }
	/** Cards, what phones hand to each other, and replication; the id is what a link holds, or nothing. */
	| { readonly screen: "card" | "take" | "hand" | "live"; readonly id: string | null }
	/** What is known of the pumps of a place; the id is its name. */
	| { readonly screen: "place"; readonly id: string }
	/** One entry of the log. */
	| { readonly screen: "entry"; readonly id: string }
	/** The fill screen, replacing the stop that an entry belongs to. */
	| { readonly screen: "correct"; readonly id: string }
	/** A calibration by its id, or a new one; a way of measuring, or the list; what to put right of the last entries, or all of them. */
	| { readonly screen: "calibration" | "measure" | "doubt"; readonly id: string | null };

export function parseRoute(hash: string): Route {
	const [, screen, id] = hash.replace(/^#/, "").split("/").map(decode);
	if ((screen === "entry" || screen === "correct" || screen === "place") && id) return { screen, id };
	if (screen === "calibration" || screen === "measure" || screen === "doubt") return { screen, id: id || null };
	if (screen === "card" || screen === "take" || screen === "hand" || screen === "live")
		return { screen, id: id || null };
	if (screen === "plan" || screen === "places" || screen === "table" || screen === "costs") return { screen };
	if (screen === "cars") return { screen, id: id || null };
	if (screen === "report" || screen === "reports") return { screen };
	if (screen === "datalog" || screen === "engine" || screen === "why") return { screen };
	if (screen === "fill" || screen === "log" || screen === "car" || screen === "setup") return { screen };
	return { screen: "tank" };
}

export function printRoute(route: Route): string {
	const id = "id" in route && route.id ? `/${encodeURIComponent(route.id)}` : "";
	return `#/${route.screen}${id}`;
}

function decode(part: string): string {
	try {
		return decodeURIComponent(part);
	} catch {
		return part;
	}
}
