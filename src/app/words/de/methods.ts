import { typedNumber } from "../../typedNumber";
import type { Words } from "../en/methods";

const known: Readonly<Record<string, string>> = {
	"ethanol analyser": "Ethanolmessgerät",
	"ethanol sensor": "Ethanolsensor",
	"scan tool": "Diagnosegerät",
	"data log": "Datenlog",
	"data log, lambda under load": "Datenlog, Lambda unter Last",
	"data log, the car’s own report (PID 52)": "Datenlog, Angabe des Fahrzeugs (PID 52)",
	"the car’s own report (PID 52)": "Angabe des Fahrzeugs (PID 52)",
	"water tube": "Wassertest",
};
const tube = /^water tube, ([\d.]+)\s?mL with ([\d.]+)\s?mL of water, layer ([\d.]+)\s?mL$/;

export const words: Words = {
	told: (method) => {
		if (Object.hasOwn(known, method)) return known[method];
		const [fuel, water, layer] = (tube.exec(method) ?? []).slice(1).map(typedNumber);
		if (layer === undefined) return method;
		return `Wassertest, ${fuel}\u00a0mL mit ${water}\u00a0mL Wasser, Schicht ${layer}\u00a0mL`;
	},
};
