import type { Words } from "../en/notices";

export const words: Words = {
	missing: "Auf diesem Gerät fehlt ein Teil des Logbuchs",
	lost: "Der Speicher des Geräts hat etwas verloren, das gespeichert war. Bis es zurück ist, können die Zahlen falsch sein.",
	look: "Sehen, was fehlt",
	aCar: "Ein Auto",
	aCarAmong: "ein Auto",
	ofCar: (what) => ` – ${what}`,
	bringAll: "Alles zurückholen",
	bringSome: "Zurückholen, was da ist",
	goOn: "Ohne das weitermachen",
	inOrder: "Das Logbuch ist wieder in Ordnung.",
	returned: "Es war entfernt worden, und der Speicher des Geräts hat einen älteren Stand davon zurückgebracht.",
	carGone: "Das Auto selbst fehlt.",
	entriesMissing: (count) => `${entries(count)} ${count === 1 ? "fehlt" : "fehlen"}.`,
	entriesChanged: (count) => `${entries(count)} ${count === 1 ? "sagt" : "sagen"} nicht mehr, was gespeichert wurde.`,
	strays: (count) => `${entries(count)} ${count === 1 ? "gehört" : "gehören"} zu einem anderen Auto.`,
	oldSettings: "Name, Tank oder Abstimmungen sind älter als das, was gespeichert wurde.",
	otherEntries: "Die Einträge sind nicht die, die gespeichert wurden.",
	noCopy:
		"Dieser Browser hält auf dem Gerät keine zweite Kopie, die sich lesen ließe. In einer Sicherung steht, was bis zu ihrem Tag gespeichert wurde: Öffnen Sie sie hier.",
	wholeCopy: "In einer zweiten Kopie auf diesem Gerät ist alles da.",
	nowhere: (count) =>
		`${entries(count)} ${count === 1 ? "ist" : "sind"} auf diesem Gerät nirgends mehr; vielleicht ${count === 1 ? "steht er" : "stehen sie"} in einer Sicherung.`,
	nowhereButRest: (count) =>
		`${entries(count)} ${count === 1 ? "ist" : "sind"} auf diesem Gerät nirgends mehr; vielleicht ${count === 1 ? "steht er" : "stehen sie"} in einer Sicherung. Der Rest ist in einer zweiten Kopie auf diesem Gerät.`,
	backCar: "das Auto",
	backEntries: (count) => entries(count),
	backSettings: "die Einstellungen",
	and: (parts) => parts.join(" und "),
	backOf: (what, car) => `„${car}“: ${what}`,
	back: (what) => `Zurückgeholt: ${what}.`,
	notBack: (mended, count) => `${mended} ${entries(count)} ließ${count === 1 ? "" : "en"} sich nicht zurückholen.`,
	newer: "App aktualisieren",
	newerEntries: (count) =>
		`Eine neuere Version der App hat ${count === 1 ? "einen Eintrag" : `${count} Einträge`} geschrieben, ${count === 1 ? "den" : "die"} diese nicht lesen kann. Verloren ist nichts, aber bis die App aktualisiert ist, ${count === 1 ? "zählt er" : "zählen sie"} nicht, und die Zahlen können falsch sein.`,
	clock: "Geht die Uhr des Geräts richtig?",
	clockBehind: (now, newest) =>
		`Sie zeigt ${now}, aber der neueste Eintrag ist vom ${newest}. Einträge zählen in der Reihenfolge ihrer Zeiten: Was jetzt gespeichert wird, kommt vor diesem. Stellen Sie die Uhr, oder nehmen Sie den Eintrag zurück und tragen Sie ihn mit seiner wahren Zeit ein.`,
	seeLog: "Zum Logbuch",
};

function entries(count: number): string {
	return `${count} ${count === 1 ? "Eintrag" : "Einträge"}`;
}
