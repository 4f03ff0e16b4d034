import type { Words } from "../en/events";

const withBy = (by: string | undefined) => (by ? ` (${by})` : "");

export const words: Words = {
	began: (content) => `die Rechnung begann mit ${content} Ethanol im Tank`,
	gaugeNoted: (share) => `Tankstand notiert: ${share}`,
	tankMeasured: (content, by) => `Messung im Tank${withBy(by)}: ${content}`,
	pumpMeasured: (fuel, place, content, by) => `Messung von „${fuel}“, ${place}${withBy(by)}: ${content}`,
	trim: (trim, calibratedFor, by) =>
		`Gemischkorrektur (Fuel Trim)${withBy(by)}: ${trim} bei einer Abstimmung für ${calibratedFor}`,
	poured: (amount, fuel) => `${amount} „${fuel}“`,
	stop: (poured, place, toClick) =>
		`${poured.join(" und ")}${place === undefined ? "" : `, ${place}`}${toClick ? ", bis zum Abschalten" : ""}`,
	alone: (line) => line.charAt(0).toLocaleUpperCase() + line.slice(1),

	about: (amount) => `etwa ${amount}`,
	mend: (amount, fuel) => `Das brächte es in Ordnung: ${amount} „${fuel}“ dazu, bevor Sie weiterfahren.`,
	noMend: (fuel) =>
		`Keine Menge „${fuel}“, die in den Tank passt, würde helfen: Verfahren Sie erst etwas, ohne Ladedruck.`,
	help: (amount, fuel, inside) =>
		`Das hülfe, ohne es zu beheben: etwa ${amount} „${fuel}“ dazu, bevor Sie weiterfahren. Im Fenster dann: ${inside}.`,
};
