import type { Words } from "../en/fuelSystem";

export const words: Words = {
	openingForm: "Das Formular wird geöffnet …",
	title: "Karte des Kraftstoffsystems",
	titleWith: (entered, all) =>
		`Karte des Kraftstoffsystems: ${entered === 0 ? "leer" : `${entered} von ${all} eingetragen`}`,
	leaveEmpty: "Lassen Sie leer, was Sie nicht wissen: Jede Zahl, die da ist, hilft.",
	parts: {
		injectors: "Einspritzdüsen",
		pump: "Kraftstoffpumpe",
		engine: "Was der Motor verlangt",
		lambda: "Gemischkorrektur und Lambda",
	},
	spreads: "Wie sicher diese Zahlen sind",
	spreadsMeant: "Standardunsicherheiten, relativ: In zwei von drei Fällen liegt der wahre Wert darin.",
	mend: "Oben ist etwas zu berichtigen; noch ist nichts gespeichert.",
	save: "Karte speichern",
	saved: "Die Karte des Kraftstoffsystems ist gespeichert.",

	fields: {
		injectorFlowCcPerMin: "Durchfluss einer Einspritzdüse",
		injectorRatedKPa: "Druck, für den dieser Durchfluss gilt",
		injectorFullLoadKPa: "Druck über der Einspritzdüse bei Volllast",
		injectorCount: "Anzahl der Einspritzdüsen",
		dutyLimit: "Größte Auslastung der Einspritzdüsen",
		pumpFlowLPerH: "Förderstrom der Pumpe bei Volllast",
		powerKW: "Größte Leistung",
		consumptionGPerKWh: "Spezifischer Verbrauch mit Benzin",
		trimAuthority: "So weit kann die Gemischkorrektur anfetten",
		commandedLambda: "Vorgegebenes Lambda bei Volllast",
		leanestLambda: "Magerstes Lambda, das der Tuner dort hinnimmt",
		injectorFlowSd: "Unsicherheit des Durchflusses",
		pressureSd: "Unsicherheit des Drucks",
		pumpFlowSd: "Unsicherheit des Förderstroms",
		powerSd: "Unsicherheit der Leistung",
		consumptionSd: "Unsicherheit des Verbrauchs",
		trimSd: "Unsicherheit der Gemischkorrektur",
		lambdaSd: "Unsicherheit des Lambda",
	},
	unitOf: (field) => `Einheit von „${field}“`,
	hints: {
		poundsPerHour: "1\u00a0lb/h gilt als 10,5\u00a0cc/min, bei einer Dichte von 0,72\u00a0kg/L (übliche Praxis).",
		fullLoadPressure: "Kraftstoffdruck minus Saugrohrdruck. Er zählt nur zusammen mit dem darüber.",
		dutyLimit: (usual) => `Leer zählt als ${usual} (übliche Praxis: 80 bis 85).`,
		pumpFlow: "Aus der Kennlinie der Pumpe, bei Kraftstoffdruck und Spannung der Volllast.",
		power: "An der Kurbelwelle; Rollen unter den Rädern zeigen weniger.",
		consumption: (unit, plain, boosted) =>
			`Bei dieser Leistung: oft ${plain.join(" bis ")}\u00a0${unit} ohne Ladedruck, ${boosted.join(" bis ")} mit (übliche Praxis).`,
		trimAuthority: "Langzeit und Kurzzeit zusammen, bevor der Motor aufgibt.",
		commandedLambda: "Von der aufgespielten Abstimmung, auf dem Gemisch, für das sie gemacht ist.",
		leanestLambda: "Größer ist magerer. Das kann nur der Tuner sagen.",
		usual: (spread) => `Leer zählt als ${spread}.`,
	},
	notWhole: "Zählen Sie sie: eine ganze Zahl, etwa 4.",
	leanerThanLeanest: (commanded) =>
		`Der Wert darf nicht kleiner sein als das vorgegebene Lambda, ${commanded}: Die größere Zahl ist die magerere.`,

	limits: "Grenzen des Kraftstoffsystems",
	unusable: "Eine Zahl auf der Karte ist so nicht brauchbar, deshalb wird keine Grenze berechnet.",
	tooLittle: "Für eine Grenze ist zu wenig bekannt: Füllen Sie die Karte oben aus, so weit Sie können.",
	none: "Nichts, was hier bekannt ist, setzt eine Grenze unterhalb von reinem Ethanol.",
	mind: "Bedenken Sie",
	tank: "Tank jetzt",
	about: (content) => `etwa ${content}`,
	binds: "Begrenzt",
	keys: {
		span: "neun von zehn Malen, und die Mitte",
		edge: (content) => `magere Grenze, ${content}`,
		window: (content) => `Ende des Fensters, ${content}`,
	},
	kinds: {
		injectors: "Einspritzdüsen",
		pump: "Kraftstoffpumpe",
		trim: "Gemischkorrektur",
		lambda: "Magerstes Lambda",
	},
	enough: "keine, es reicht für reines Ethanol",
	notEvenGasoline: "reicht nicht einmal für Benzin",
	likelyEnough: (low) => `höchstwahrscheinlich keine, vielleicht ab ${low}`,
	likelyNotEvenGasoline: (high) => `reicht höchstwahrscheinlich nicht einmal für Benzin, bestenfalls ${high}`,
	missing: (fields, calibration) => {
		const all = [...fields.map((field) => `„${field}“`), ...(calibration ? ["eine Abstimmung"] : [])];
		return `unbekannt, es fehlt: ${all.join(", ")}`;
	},
	binding: {
		injectors: "Zuerst begrenzen die Einspritzdüsen: So lange offen, wie sie dürfen, liefern sie nicht mehr.",
		pump: "Zuerst begrenzt die Kraftstoffpumpe: Bei diesem Druck fördert sie nicht mehr.",
		trim: "Zuerst begrenzt die Gemischkorrektur: Jenseits davon korrigiert nichts mehr das Gemisch, auch nicht im geregelten Betrieb.",
		lambda: "Zuerst begrenzt das magerste Lambda: Jenseits davon läuft Volllast magerer, als der Tuner hinnimmt.",
	},
	edgeRisk: (risk) =>
		`Alle Grenzen zusammengenommen, liegt die wirkliche mit einer Chance von ${risk} tiefer: So viel nimmt die Abstimmung an zu viel Ethanol hin.`,
	window: {
		same: (end) =>
			`Auch das Fenster der Abstimmung endet bei ${end}: Es ist so weit, wie das Kraftstoffsystem sicher zulässt.`,
		further: (end) => `Das Fenster der Abstimmung reicht bis ${end}, weiter als das Kraftstoffsystem mit Sicherheit.`,
		before: (end) =>
			`Das Fenster der Abstimmung endet bei ${end}, früher als das Kraftstoffsystem. Ihr Tuner kann andere Gründe dafür haben: Fragen Sie, bevor Sie es erweitern.`,
	},
	reachesPast: (range) =>
		`Der Bereich des Tanks, ${range}, reicht darüber hinaus: Fahren Sie ohne Ladedruck, bis ein Test oder die nächste Füllung das geklärt hat.`,
	shortFault:
		"Das ist weniger, als wofür die Abstimmung gemacht ist: Fahren Sie ohne Ladedruck, bis Ihr Tuner es sich angesehen hat.",
	shortWhy:
		"Entweder stimmt eine Zahl auf der Karte nicht, oder das Kraftstoffsystem reicht schon für diese Abstimmung nicht. Als Grenze ihres Fensters wäre das sinnlos, deshalb wird es nicht vorgeschlagen.",
	edgeNone: "Magere Grenze: reicht nicht sicher für Benzin",
	edge: (content) => `Magere Grenze: ${content}`,
	cautions: {
		tunerDecides:
			"Ihr Tuner entscheidet, dann der Fahrzeughersteller. Es gilt das Recht vor Ort: In den USA sind Gemische mit mehr als 15\u00a0% Ethanol nur in Flexfuel-Fahrzeugen zulässig.",
		usualSpreads:
			"Nicht alle diese Unsicherheiten sind die dieses Autos: Wo die Karte keine nennt, gilt die gebräuchliche (übliche Praxis).",
		flowUnknown: "Über Einspritzdüsen und Pumpe ist nichts bekannt, und beide können zuerst am Ende sein.",
		fullLoadUnknown:
			"Die Lambdawerte der Volllast stehen nicht auf der Karte. Viele Motoren nehmen gelernte Gemischkorrekturen nicht in die Volllast mit (13 von 25 untersuchten Autos, CRC E-87-1): Die Korrektur allein verspricht dort nichts.",
	},

	halfTyped:
		"Eine andere Abstimmung ist halb eingegeben, und ihr Formular würde geleert. Speichern Sie sie zuerst, oder machen Sie ohne sie weiter.",
	goOn: "Ohne die halb eingegebene weitermachen",
	useEdge: (content) => `${content} als obere Grenze des Fensters nehmen`,
	opens:
		"Das öffnet die Abstimmung mit dieser Zahl im Formular. Nichts ändert sich, bevor es dort gespeichert wird, und Ihr Tuner entscheidet.",
};
