import type { Words } from "../en/cautions";

export const words: Words = {
	title: "Warnhinweise",
	usual: [
		"Dies ist eine Schätzung. Sie weiß, was Sie ihr gesagt haben und was die Angaben an der Zapfsäule zulassen, nicht, was im Tank ist.",
		"Zuerst gelten die Grenzen Ihres Tuners, dann die des Autoherstellers. Nichts hier ersetzt eine Messung.",
		"Es gilt das Recht über Kraftstoffe und Abgase. In den USA sind Gemische mit mehr als 15 % Ethanol nur in Flexfuel-Fahrzeugen zulässig; andere Länder haben eigene Regeln.",
		"Viele Motoren nehmen gelernte Gemischkorrekturen nicht in die Volllast mit (13 von 25 untersuchten Autos, CRC E-87-1): Ein mageres Gemisch wird gerade dann nicht korrigiert, wenn es darauf ankommt.",
		"An der Zapfsäule: Motor aus, nicht rauchen, keine Flammen, während des Tankens nicht wieder ins Auto setzen (statische Ladung), nach dem Abschalten der Zapfpistole nicht nachtanken und das Handy von ihr fernhalten.",
	],
};
