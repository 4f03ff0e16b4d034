/** Events in words. */
import type { FillEvent, TankEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import { exactPercent, exactVolume, percent } from "./format";
import { productName, productRange } from "./text";

/** One event in a line; the fills of its stop are told together. */
export function eventWords(event: TankEvent, together: readonly FillEvent[], unit: VolumeUnit): string {
	switch (event.kind) {
		case "fill":
			return stopWords(together.length > 0 ? together : [event], unit);
		case "start": {
			const { contents } = event;
			const what =
				"range" in contents
					? productRange({ id: "", range: contents.range })
					: `${exactPercent(contents.value)} ± ${exactPercent(contents.sd)}`;
			return `the account began with ${what} ethanol in the tank`;
		}
		case "level":
			return `the gauge was noted at ${percent(event.gauge)}`;
		case "reading":
			return readingWords(event);
	}
}

function readingWords(event: Extract<TankEvent, { kind: "reading" }>): string {
	const by = event.method ? ` by ${event.method}` : "";
	switch (event.of) {
		case "tank":
			return `the tank was measured${by}: ${exactPercent(event.value)}`;
		case "pump":
			return `“${productName(event.product)}” at ${event.place} was measured${by}: ${exactPercent(event.value)}`;
		case "trim":
			return `fuel trim${by}: ${exactPercent(event.value)} on a calibration for ${exactPercent(event.calibratedFor)}`;
	}
}

function stopWords(fills: readonly FillEvent[], unit: VolumeUnit): string {
	const parts = fills.map((fill) => `${exactVolume(fill.litres, unit)} of “${productName(fill.product)}”`);
	const place = fills.find((fill) => fill.place !== undefined)?.place;
	const click = fills.at(-1)?.toClick ? ", filled to the click" : "";
	return `${parts.join(" and ")}${place === undefined ? "" : ` at ${place}`}${click}`;
}
