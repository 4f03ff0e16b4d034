/** A water test as a person reads it off the cylinder. */
import type { Product, PumpReading, TankReading } from "../../../domain/event";
import { type WaterTubeContent, waterTubeContent } from "../../../domain/readings/waterTube";
import { err, ok } from "../../../domain/result";
import { readNumber } from "../../numberWords";
import { type Read, type ReadingContext, readSd, together, type Unrecorded } from "../../readingDraft";
import { typedNumber } from "../../typedNumber";
import { figuresWords } from "../../words/figures";
import { waterTubeWords } from "../../words/waterTube";

export interface TubeForm {
	readonly of: "tank" | "pump";
	readonly place: string | null;
	readonly product: Product;
	/** Millilitres. */
	readonly fuel: string;
	readonly water: string;
	readonly layer: string;
	readonly readTo: string;
	/** The method's own uncertainty in points; nothing: the usual one. */
	readonly own: string;
}

export function emptyTube({ usual }: ReadingContext, place: string | null, product: Product): TubeForm {
	const read = { readTo: usual("cylinder"), own: usual("method") };
	return { of: "tank", place, product, fuel: "50", water: "50", layer: "", ...read };
}

/** What the cylinder says, whatever it was filled with. */
export function readTube(form: TubeForm): Read<TubeForm, WaterTubeContent> {
	const words = waterTubeWords();
	const millilitres = (typed: string, least: number, most: number, example: string) =>
		readNumber(typed, least, most, { example, limits: words.limits(typedNumber(least), typedNumber(most)) });
	const volume = (typed: string, example: string) => millilitres(typed, 1, 5000, example);
	const read = together({
		fuel: volume(form.fuel, "50"),
		water: volume(form.water, "50"),
		layer: volume(form.layer, "63.5"),
		readTo: millilitres(form.readTo, 0.01, 50, "0.5"),
		own: form.own.trim() === "" ? ok(undefined) : readSd(form.own, "2"),
	});
	if (!read.ok) return read;
	const { fuel, water, layer, readTo, own } = read.value;
	const content = waterTubeContent({ fuelMl: fuel, waterMl: water, layerMl: layer }, readTo, own);
	return content.ok ? content : err({ layer: words.faults[content.error] });
}

export function readTubeReading(form: TubeForm): Read<TubeForm, Unrecorded<TankReading | PumpReading>> {
	const { place, product } = form;
	const tube = readTube(form);
	const placeFault = form.of === "pump" && place === null ? { place: figuresWords().placeMissing } : {};
	if (!tube.ok) return err({ ...tube.error, ...placeFault });
	const { content: value, sd } = tube.value;
	const [fuel, water, layer] = [form.fuel, form.water, form.layer].map((typed) => typed.trim().replace(",", "."));
	const method = `water tube, ${fuel}\u00a0mL with ${water}\u00a0mL of water, layer ${layer}\u00a0mL`;
	const measured = { kind: "reading", value, sd, method } as const;
	if (form.of === "tank") return ok({ ...measured, of: "tank" });
	return place === null ? err(placeFault) : ok({ ...measured, of: "pump", place, product });
}
