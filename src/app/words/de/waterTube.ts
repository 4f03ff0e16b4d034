import { strong } from "../../emphasis";
import type { Words } from "../en/waterTube";

export const words: Words = {
	title: "Wassertest",
	about:
		"Wasser zieht das Ethanol aus dem Kraftstoff, und die untere Schicht wächst. Beim Mischen schrumpft das Volumen; das wird berücksichtigt.",
	steps: [
		"Sie brauchen einen schmalen Messzylinder, der sich verschließen lässt, aus Glas oder aus Kunststoff, den Kraftstoff nicht angreift, und Wasser.",
		"Von der Zapfsäule: erst den alten Kraftstoff aus dem Schlauch in den Tank laufen lassen, dann die Probe in einen zugelassenen Kanister füllen.",
		"Kraftstoff einfüllen, etwa 50\u00a0mL, und in Augenhöhe ablesen, am tiefsten Punkt der Wölbung.",
		"Ebenso viel Wasser zugeben. Mit wenig Wasser liest man bei viel Ethanol zu hoch ab.",
		"Verschließen, 15\u00a0Sekunden schütteln, langsam öffnen, damit der Druck entweicht, und noch einmal schütteln.",
		"Fünf Minuten aufrecht stehen lassen, bis die Linie zwischen den Schichten scharf ist.",
		"Die untere Schicht ablesen: dort, wo die beiden Flüssigkeiten sich treffen.",
	],
	cautions: [
		"Im Freien arbeiten, ohne Zündquellen, Flammen oder heiße Teile in der Nähe, nicht rauchen: Dämpfe entzünden sich auch weit weg von der Probe.",
		"Augen und Haut schützen: Schutzbrille und Handschuhe, die Kraftstoff nicht durchlassen. Dämpfe nicht einatmen; was auf die Haut gerät, abwaschen.",
		"Eine Probe aus dem Tank: Kraftstoff in den Leitungen steht unter Druck. Überlassen Sie das einer Werkstatt, es sei denn, der Fahrzeughersteller gibt dafür ein Verfahren an.",
		"Entsorgung: Die Probe ist gefährlicher Abfall, auch das Wasser darin. In einem geschlossenen, beschrifteten Kanister aufbewahren und dort abgeben, wo Altkraftstoff angenommen wird. Nie zurück in den Tank, in den Abfluss oder auf den Boden gießen.",
	],
	source: "Die Probe stammt aus",
	tank: "Tank",
	pump: "Zapfsäule",
	pumpMore: "Probe aus der Zapfpistole",
	fuel: "Kraftstoff, mL",
	water: "Wasser, mL",
	layer: "Untere Schicht nach dem Absetzen, mL",
	layerHint: "Die ganze Schicht, das Wasser eingeschlossen.",
	readTo: "Jeweils abgelesen auf, mL",
	readToHint: "Der halbe Abstand zweier Teilstriche.",
	own: "Unsicherheit der Methode (±), Punkte",
	ownHint:
		"Für Ethanol, das im Kraftstoff bleibt, und Benzin im Wasser. Leer: 2 bis zu 40\u00a0% Ethanol, darüber 4 (übliche Praxis).",
	understood: (content, points, uncorrected) =>
		`${strong(content)} Ethanol, ±\u00a0${points}\u00a0Punkte. Ohne die Korrektur wären es ${uncorrected}.`,
	strongLayer: (strength) =>
		`Die untere Schicht hätte ${strength} Ethanol: Eine so starke Schicht nimmt Benzin auf und zeigt zu viel. Wiederholen Sie den Test mit ebenso viel Wasser wie Kraftstoff.`,
	limits: (least, most) => `${least} und ${most}\u00a0mL`,
	faults: {
		layerLost:
			"Die untere Schicht ist kleiner als das eingefüllte Wasser: Lesen Sie noch einmal ab, oder prüfen Sie das Wasser.",
		layerTooLarge:
			"So viel Ethanol war nicht im Kraftstoff: Prüfen Sie die drei Mengen, und ob es die untere Schicht ist.",
	},
};
