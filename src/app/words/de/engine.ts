import { strong } from "../../emphasis";
import type { Words } from "../en/engine";

export const words: Words = {
	reading: "Das Logbuch wird gelesen …",
	title: "Was das Gemisch mit dem Motor macht",
	tank: (content, range) => `Im Tank sind etwa ${content} Ethanol, neun von zehn Malen ${range}.`,
	tankUnknown: "Über diesen Tank ist noch nichts bekannt.",
	madeFor: (calibration, content) => `„${calibration}“ ist gemacht für ${content}.`,
	noCalibration: "Es ist keine Abstimmung eingetragen, also lässt sich nichts mit einer vergleichen.",
	curves: (band) =>
		`Jede Kurve läuft von keinem bis zu reinem Ethanol. ${band ? "Das senkrechte Band ist der Bereich des Tanks, neun von zehn Malen. " : ""}Schattiert entlang einer Kurve: andere Benzine als das übliche, für das die Zahlen gelten.`,
	toFuelSystem: "Zum Kraftstoffsystem und seinen Grenzen",
	compare: (content) => `Vergleich mit ${strong(content)} Ethanol`,
	commands: (lambda) => `Bei Volllast gibt sie ${lambda} vor, sagt die Karte des Kraftstoffsystems.`,
	commandsOne:
		"Hier für eine Abstimmung, die 1 vorgibt; was sie bei Volllast vorgibt, gehört auf die Karte des Kraftstoffsystems.",
	trimsReach: (authority) => `Die Karte des Kraftstoffsystems gibt ihr ${authority}.`,

	tankNow: "Tank jetzt",
	valueMadeFor: (content) => `Soll: ${content}`,
	valueAt: (content) => `Bei ${content}`,
	source: "Woher das stammt",
	signedRange: (from, to) => `${from} bis ${to}`,
	curve: (name, none, pure) =>
		`${name} über dem Ethanolgehalt, von ${none} ohne Ethanol bis ${pure} bei reinem Ethanol.`,
	band: (low, high) => `Der Bereich des Tanks, ${low} bis ${high}, ist als Band gezeichnet.`,

	groups: {
		fuelling: "Gemisch und Kraftstoffmenge",
		heat: "Wärme und Kühlung",
		knock: "Klopffestigkeit",
		liquid: "Die Flüssigkeit selbst",
	},
	properties: {
		airFuelRatio: {
			name: "Stöchiometrisches Luft-Kraftstoff-Verhältnis",
			unit: "kg Luft je kg Kraftstoff",
			means: "So viel Luft verbrennt ein Kilogramm des Gemischs: Ethanol bringt eigenen Sauerstoff mit.",
			source:
				"Nach Masse aus 14,6 für Benzin (Zope et al., ACC 2011) und 9,0 für Ethanol (DOE AFDC, Fuel Properties, dort 14,7 für Benzin).",
		},
		lambda: {
			name: "Lambda ohne Regelung",
			unit: "",
			means:
				"Was mit der aufgespielten Abstimmung herauskommt, wo nichts sie korrigiert, etwa bei Volllast. Größer ist magerer.",
			source:
				"Das vorgegebene Lambda mal dem Kraftstoff, den dieses Gemisch für dieselbe Luft braucht, durch den, den das abgestimmte braucht. Das eingespritzte Volumen gilt als gleich.",
		},
		injectors: {
			name: "Einspritzzeit, gegen das abgestimmte Gemisch",
			unit: "",
			means: "So viel länger müssen die Einspritzdüsen für dieselbe Luft und dasselbe Lambda offen sein.",
			source:
				"Volumen nach der Luft, die es verbrennt, und ein Durchfluss, der mit der Wurzel der Dichte fällt (Bernoulli; Heywood, Internal Combustion Engine Fundamentals, Kap. 7).",
		},
		pump: {
			name: "Kraftstoffvolumen, gegen das abgestimmte Gemisch",
			unit: "",
			means: "So viel mehr Kraftstoff muss die Pumpe für dieselbe Luft und dasselbe Lambda fördern.",
			source: "Volumen nach der Luft, die es verbrennt. Nach Heizwert gerechnet wäre es bis zu 0,7\u00a0% weniger.",
		},
		trim: {
			name: "Verbrauchte Gemischkorrektur",
			unit: "",
			means:
				"So viel gibt der Motor im geregelten Betrieb von selbst zu, solange seine Korrektur reicht. Für Lecks bleibt dann vielleicht wenig.",
			source:
				"Das Kraftstoffvolumen oben. Viele Motoren nehmen Gelerntes nicht in die Volllast mit (13 von 25 untersuchten Autos, CRC E-87-1).",
		},
		heat: {
			name: "Heizwert",
			unit: "MJ/L",
			means: "Wärme in einem Liter: Mit weniger davon kommt das Auto mit einem Tank weniger weit.",
			source:
				"Untere Heizwerte nach Masse, 43,44 und 26,95\u00a0MJ/kg (DOE AFDC, Fuel Properties), mal Dichte. Schattiert: Benzine von 0,720 bis 0,775\u00a0kg/L (EN 228, aus dem Gedächtnis).",
		},
		cooling: {
			name: "Verdampfungswärme",
			unit: "kJ je kg stöchiometrisches Gemisch",
			means:
				"Wärme, die der Kraftstoff der Ladung beim Verdampfen entzieht: Mehr davon kühlt die Ladung und erschwert den Kaltstart.",
			source:
				"Nach Masse aus 350\u00a0kJ/kg für Benzin und 921 für Ethanol (DOE AFDC, Fuel Properties), durch die Masse des Gemischs. Schattiert: Benzine von 325 bis 375\u00a0kJ/kg, von NREL gemessen (OSTI 1242469).",
		},
		ron: {
			name: "Oktanzahl, ROZ",
			unit: "",
			means:
				"Klopffestigkeit in der milderen Prüfung. Der größte Teil des Gewinns kommt mit den ersten 40\u00a0% Ethanol.",
			source:
				"Molar-lineare Regel (Anderson et al., Energy & Fuels 24, 2010, 6576) für Benzin mit ROZ 95, dem Mindestwert nach EN 228, und 109 für Ethanol. Schattiert: bis zu dem, was zwei Forschungsbenzine mit ROZ 94 und 96 darüber lagen (doi 10.1021/acs.energyfuels.8b00556). Paraffinische Benzine gewinnen mehr.",
		},
		mon: {
			name: "Oktanzahl, MOZ",
			unit: "",
			means: "Klopffestigkeit in der härteren Prüfung, heißer und schneller. Dort bringt Ethanol weniger.",
			source:
				"Molar-lineare Regel (Anderson et al., Energy & Fuels 24, 2010, 6576) für Benzin mit MOZ 85, dem Mindestwert nach EN 228, und 90 für Ethanol. Schattiert: bis zu dem, was zwei Forschungsbenzine darüber lagen (doi 10.1021/acs.energyfuels.8b00556).",
		},
		density: {
			name: "Dichte",
			unit: "kg/L",
			means: "Was ein Liter wiegt: Ein dichteres Gemisch fließt etwas langsamer durch dieselbe Einspritzdüse.",
			source:
				"Nach Volumen aus 0,745 für Benzin und 0,789 für Ethanol bei 20\u00a0°C. Schattiert: Benzine von 0,720 bis 0,775\u00a0kg/L (EN 228, aus dem Gedächtnis).",
		},
		vapourPressure: {
			name: "Dampfdruck bei 37,8\u00a0°C",
			unit: "kPa",
			means:
				"Wie leicht es verdampft: Ein wenig Ethanol hebt ihn, viel davon senkt ihn, und ein kalter Motor springt schlechter an.",
			source:
				"Wilson-Gleichung mit Benzin als einem Stoff (Pumphrey et al., Fuel 79, 2000, 1405), angepasst an Richtlinie 98/70/EG, Anhang III, und EPA MOVES; für ein Sommerbenzin von 60\u00a0kPa. Schattiert: Benzine von 48 bis 90\u00a0kPa, Sommer bis Winter.",
		},
	},
};
