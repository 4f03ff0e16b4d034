import type { Words } from "../en/blend";

export const words: Words = {
	products: {
		"flex-51-83": "Flexfuel E85 (USA)",
		"gasoline-e10": "Benzin E10 (USA)",
		"gasoline-to-10": "Benzin, bis 10 %",
		"gasoline-e0": "Benzin ohne Ethanol",
		"gasoline-e15": "Benzin E15 (USA)",
		"gasoline-e5": "Benzin E5 (EU)",
		"gasoline-e20": "Benzin E20 (EU)",
		"flex-e85-eu": "E85 (EU)",
		"flex-e85-au": "E85 (Australien)",
		"gasoline-c": "Benzin C (Brasilien)",
		"ethanol-e98": "Vergälltes Ethanol",
	},
	labelled: (percent) => `Flexfuel „${percent}“`,
	soldIn: { US: "USA", EU: "Europa", AU: "Australien", BR: "Brasilien", any: "Überall" },
	verdicts: {
		yes: {
			line: "Lade\u00addruck: ja",
			more: "Das Gemisch liegt so sicher im Fenster der Abstimmung, wie Sie es verlangt haben.",
		},
		unsure: {
			line: "Lade\u00addruck: jetzt nicht",
			more: "Das Gemisch liegt vielleicht außerhalb des Fensters der Abstimmung.",
		},
		no: {
			line: "Lade\u00addruck: nein",
			more: "Das Gemisch liegt eher außerhalb des Fensters der Abstimmung als darin.",
		},
		noWindow: {
			line: "Lade\u00addruck: unbekannt",
			more: "Es ist keine Abstimmung eingetragen, also kein Fenster da, an dem sich das Gemisch messen ließe.",
		},
		fresh: {
			line: "Lade\u00addruck: ja, sobald es angekommen ist",
			more: "Das neue Gemisch liegt im Fenster der Abstimmung, aber in den Leitungen ist noch das alte, bis Sie einige Kilometer gefahren sind.",
		},
	},
	signal: "HINWEIS",
	howLikely: (inTwenty, chance, budget) => `${inTwenty} (${chance}), hingenommen werden ${budget}`,
	measure: "Messen Sie, wenn Sie können: „Was würde Klarheit schaffen?“ auf der Seite Tank sagt, welche Messung lohnt.",
	lean: {
		likely: "Zu viel Ethanol: mager unter Ladedruck",
		possible: "Vielleicht zu viel Ethanol",
		sure: (likely) => `Dass es über dem Fenster liegt: ${likely}.`,
		now: "Kein Ladedruck, kein Vollgas.",
		flash:
			"Hat Ihr Tuner Ihnen eine Abstimmung für mehr Ethanol gegeben, dann spielen Sie sie auf; fragen Sie ihn, bevor Sie weiterfahren.",
		why: (calibration) =>
			`Über dem Fenster von „${calibration}“ geben die Einspritzdüsen überall dort zu wenig Kraftstoff, wo der Motor sich nicht selbst korrigiert. Viele Motoren nehmen das bei Teillast Gelernte nicht in die Volllast mit (13 von 25 untersuchten Autos, CRC E-87-1).`,
	},
	knock: {
		likely: "Zu wenig Ethanol: es kann klopfen",
		possible: "Vielleicht zu wenig Ethanol",
		sure: (likely) => `Dass es unter dem Fenster liegt: ${likely}.`,
		now: "Kein Ladedruck.",
		flash: "Hat Ihr Tuner Ihnen eine Abstimmung für weniger Ethanol gegeben, dann gehen Sie auf sie zurück.",
		why: (calibration) =>
			`Unter dem Fenster von „${calibration}“ ist der Kraftstoff weniger klopffest, als Ladedruck und Zündung verlangen.`,
	},
	disagrees: {
		title: "Die letzte Messung passt nicht zur Rechnung",
		sure: "So eine Messung hatte eine Chance von weniger als 1 zu 100.",
		now: ["Messen Sie noch einmal.", "Suchen Sie im Logbuch nach einer fehlenden oder vertippten Füllung."],
		why: "Entweder ist diese Messung falsch, oder eine Füllung fehlt oder ist vertippt, oder eine Zapfsäule gab Kraftstoff, der nicht zu ihrer Angabe passt. Die Schätzung stützt sich auf beides und ist darum breiter.",
	},
	impossibleLevel: {
		title: "Das passt nicht in den Tank",
		sure: "Nach dem Logbuch wäre mehr im Tank, als er fasst.",
		now: ["Prüfen Sie die Menge der letzten Füllung, das Fassungsvermögen des Tanks und die Einheit."],
		why: "Was über den Füllstand gesagt war, blieb aus der Rechnung; die Füllung selbst zählt.",
	},
	impossibleDistance: {
		title: "Strecke und Kraftstoff passen nicht zusammen",
		sure: "Zur Strecke seit dem letzten Kilometerstand passt kein Kraftstoff, der im Tank war.",
		now: [
			"Prüfen Sie den Kilometerstand dieses Eintrags und den davor.",
			"Suchen Sie nach einer Füllung, die im Logbuch fehlt.",
		],
		why: "Der Kilometerstand blieb aus der Rechnung; alles andere am Eintrag zählt.",
	},
};
