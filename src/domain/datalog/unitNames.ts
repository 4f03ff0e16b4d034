/** Units as loggers write them. */
import type { Unit } from "./role";

const names: Readonly<Record<Exclude<Unit, "clock" | "fraction" | "state">, string>> = {
	s: "s sec secs second seconds",
	ms: "ms msec msecs millisec millisecond milliseconds",
	min: "min mins minute minutes",
	rpm: "rpm 1/min r/min rev/min min-1 min^-1 u/min",
	"km/h": "km/h kmh kph kmph",
	mph: "mph mi/h miles/h",
	"m/s": "m/s",
	"°C": "c degc deg.c celsius",
	"°F": "f degf deg.f fahrenheit",
	"%": "% pct percent",
	kPa: "kpa",
	bar: "bar",
	psi: "psi psia",
	mbar: "mbar hpa",
	lambda: "lambda λ lam",
	AFR: "afr a/f a:f :1",
	factor: "x",
};

/** Units of things that no role is measured in: a column in volts is no lambda, whatever its name. */
const foreign =
	"v volt volts mv ma a amp w kw hp nm g g/s g/sec kg/h lb/min mg mg/stroke g/rev g/cyl l l/h gal mm in km mi m ft deg degrees rad hz khz cc cc/min us µs";

const units = new Map<string, Unit | "foreign">([
	...foreign.split(" ").map((name) => [name, "foreign"] as const),
	...Object.entries(names).flatMap(([unit, list]) => list.split(" ").map((name) => [name, unit as Unit] as const)),
]);

/** Degree signs, and what is left of one that was read in a wrong encoding. */
const degreeSigns = /[\u00b0\u00ba\u02da\ufffd\u00e2\s]/g;

/** The unit that a text names, `foreign` for one that no role has, null for what is no unit. */
export function unitNamed(text: string): Unit | "foreign" | null {
	return units.get(text.toLowerCase().replace(degreeSigns, "")) ?? null;
}

/** A unit in brackets, after the last comma, or as the last word. */
const places = [
	/[([{]([^()[\]{}]*)[)\]}]\s*$/,
	/,([^,]*)$/,
	/[\s_]([°º]\s?[cf]|%|pct|km\/h|mph|kph|kpa|psi|bar|ms|sec|s|min|degc|degf|c|f)$/i,
];

/** A header taken apart: its words in lower case, and its unit. */
export function splitHeader(header: string): { readonly words: string; readonly unit: Unit | "foreign" | null } {
	for (const place of places) {
		const found = place.exec(header);
		const unit = found ? unitNamed(found[1]) : null;
		// What is in brackets and no unit, such as a bank, belongs to the name.
		if (found && unit !== null && found.index > 0) return { words: wordsOf(header.slice(0, found.index)), unit };
	}
	return { words: wordsOf(header), unit: header.includes("%") ? "%" : null };
}

function wordsOf(text: string): string {
	return text
		.replace(/([a-z])([A-Z])/g, "$1 $2")
		.toLowerCase()
		.replace(/λ/g, "lambda")
		.replace(/[^a-z0-9]+/g, " ")
		.replace(/([a-z]{3,})(\d)\b/g, "$1 $2")
		.trim();
}
