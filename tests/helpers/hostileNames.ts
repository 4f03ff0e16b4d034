/** A log that the format allows and whose every name tries to be more than text. */
import type { Log } from "../../src/store/wire";
import {
	aCalibration,
	aCar,
	aFill,
	aFlash,
	aLevel,
	aPumpReading,
	aStart,
	aTankReading,
	aTrimReading,
	aVoid,
} from "./logs";

/** Markup, addresses, what scripts have by birth, long words, scripts from right to left, piled marks. */
export const hostileNames: readonly string[] = [
	"<heeltap-made onclick=window.heeltapObeyed=1>",
	"<img src=x onerror=window.heeltapObeyed=1>",
	"</h1><script>window.heeltapObeyed=1</script>",
	"javascript:window.heeltapObeyed=1",
	"\"' onclick=window.heeltapObeyed=1 x='",
	"__proto__",
	"constructor",
	"a/b#c?d%2e%zz&e\\..",
	"../../etc/passwd",
	"url(x);}*{display:none}",
	"{{7*7}}#{7*7}",
	"W".repeat(200),
	"Donaudampfschifffahrtsgesellschaftskapitänsmütze".repeat(4),
	"\u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627 \u200f(1)",
	`Z${"\u0351\u036b\u0343".repeat(10)}`,
	"👨‍👩‍👧‍👦".repeat(18),
	"\u2028",
	"\u{10428}".repeat(100),
];

/** Each of them as the name of everything that has a name. */
export function hostileLog(): Log {
	const at = (i: number) => new Date(Date.UTC(2026, 4, 1) + i * 12 * 3_600_000).toISOString();
	const events = hostileNames.flatMap((name, i) => {
		const product = { id: name, range: i % 2 ? [0.51, 0.83] : [0, 0.1] };
		const named = (fields: object) => ({ at: at(4 * i), ...fields });
		return [
			aFill(
				named({
					id: idOf("fill", name),
					stop: name,
					product,
					place: name,
					litres: 10,
					pricePerLitre: 1.5,
					odometerKm: 1000 + 300 * i,
				}),
			),
			aPumpReading(
				named({
					id: idOf("pump", name),
					at: at(4 * i + 1),
					product,
					place: name,
					method: name,
					value: i % 2 ? 0.7 : 0.05,
				}),
			),
			aTankReading(named({ id: idOf("tank", name), at: at(4 * i + 2), method: name })),
			aTrimReading(named({ id: idOf("trim", name), at: at(4 * i + 3), method: name })),
		];
	});
	const calibrations = hostileNames.map((name) => aCalibration({ id: name, name }));
	const others = [aLevel({ at: at(99) }), aVoid({ at: at(100) }), aFlash({ at: at(0), calibration: hostileNames[0] })];
	return {
		car: aCar({ id: hostileNames[0], name: hostileNames[0], calibrations }),
		events: [aStart({ at: at(-1) }), ...events, ...others],
	};
}

function idOf(kind: string, name: string): string {
	return `${[...name].slice(0, 60).join("")} ${kind}`;
}
