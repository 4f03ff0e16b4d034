import type { Words } from "../en/numbers";

export const words: Words = {
	empty: (example) => `Geben Sie hier eine Zahl ein, etwa ${example}.`,
	notANumber: (example) => `Nur Ziffern und höchstens ein Komma oder Punkt, etwa ${example}.`,
	outside: (limits) => `Der Wert muss zwischen ${limits} liegen: Prüfen Sie die Zahl.`,
	outsideInUnit: (limits) => `Der Wert muss zwischen ${limits} liegen: Prüfen Sie Zahl und Einheit.`,
	limits: (least, most) => `${least} und ${most}`,
	percentLimits: (least, most) => `${least} und ${most} %`,
	pointLimits: (least, most) => `${least} und ${most} Punkten`,
	swapped: (low) => `Der Wert darf nicht unter der unteren Grenze von ${low} liegen: Tauschen Sie die beiden.`,
};
