/**
 * The water-extraction test: water draws the ethanol out of a fuel, and the lower layer grows. Water and ethanol shrink as
 * they mix, so the layer grows by less than the ethanol that went into it. Taken as ideal otherwise: all ethanol in the
 * layer, no gasoline in it, everything near 20 °C. What that leaves out is in the method's own uncertainty.
 */
import type { Fraction } from "../quantity";
import { err, ok, type Result } from "../result";
import { densitySlope, mixtureDensity } from "./ethanolWater";

/** What is read off the cylinder, mL. */
export interface WaterTube {
	readonly fuelMl: number;
	readonly waterMl: number;
	/** The lower layer once it has settled. */
	readonly layerMl: number;
}

export interface WaterTubeContent {
	/** Of the fuel. */
	readonly content: Fraction;
	/** Standard uncertainty of the content from reading the cylinder and from the method, volume fraction. */
	readonly sd: number;
	/** What the layer's growth over the fuel would say: too little, as it leaves out the shrinking. */
	readonly uncorrected: number;
	/** Volume of ethanol that went into the lower layer, over that of the layer: its alcoholic strength. */
	readonly layerStrength: number;
}

export type WaterTubeFault =
	/** The layer is smaller than the water that went into it, by more than the reading explains. */
	| "layerLost"
	/** The layer would hold more ethanol than there was fuel. */
	| "layerTooLarge";

/** The method's own standard uncertainty, volume fraction, up to and above `surelyUpTo` (common practice). */
const ownSd = { below: 0.02, above: 0.04 } as const;
const surelyUpTo = 0.4;

/** A layer stronger than this takes up gasoline, so that the test reads high (common practice): more water mends it. */
export const strongLayer = 0.8;

/** What the test is unsure of however well it is read, as a standard uncertainty of the content. */
export function methodSd(content: number): number {
	return content <= surelyUpTo ? ownSd.below : ownSd.above;
}

/**
 * Content of a fuel from a water test. `readToMl`: every volume is read to within this, mL, anything inside being as likely
 * (JCGM 101:2008, 6.4.2); `own`: the method's own standard uncertainty, where the usual one is not meant. Volumes must be
 * above nothing. Contents just below 0 or above 1 that the reading explains are taken as 0 and 1.
 */
export function waterTubeContent(
	tube: WaterTube,
	readToMl: number,
	own?: number,
): Result<WaterTubeContent, WaterTubeFault> {
	const { fuelMl, waterMl, layerMl } = tube;
	const massFraction = layerMassFraction(waterMl, layerMl);
	const ethanolMl = (layerMl * mixtureDensity(massFraction) * massFraction) / mixtureDensity(1);
	const found = ethanolMl / fuelMl;
	const reading = readingSd(fuelMl, found, massFraction, readToMl / Math.sqrt(3));
	if (layerMl < waterMl - 3 * readToMl) return err("layerLost");
	if (found > 1 + 3 * reading) return err("layerTooLarge");
	const content = Math.min(1, found) as Fraction;
	return ok({
		content,
		sd: Math.hypot(reading, own ?? methodSd(content)),
		uncorrected: (layerMl - waterMl) / fuelMl,
		layerStrength: ethanolMl / layerMl,
	});
}

/** Mass fraction of ethanol at which a layer of this volume holds all the water, and no more. */
function layerMassFraction(waterMl: number, layerMl: number): number {
	const water = waterMl * mixtureDensity(0);
	let low = 0;
	let high = 1;
	// The water in a given volume falls as the mixture gets stronger; fifty halvings are past what doubles resolve.
	for (let i = 0; i < 50; i++) {
		const between = (low + high) / 2;
		if (layerMl * mixtureDensity(between) * (1 - between) > water) low = between;
		else high = between;
	}
	return low;
}

/** Standard uncertainty of the content where each of the three volumes has `u`, mL (JCGM 100:2008, 5.1.2). */
function readingSd(fuelMl: number, content: number, massFraction: number, u: number): number {
	const density = mixtureDensity(massFraction);
	const slope = densitySlope(massFraction) / density;
	// Volumes that a kilogram more of either adds to the mixture, times its density: partial specific volumes.
	const byEthanol = 1 - (1 - massFraction) * slope;
	const byWater = 1 + massFraction * slope;
	const perLayer = density / (mixtureDensity(1) * byEthanol);
	const perWater = (mixtureDensity(0) * byWater) / (mixtureDensity(1) * byEthanol);
	return (u / fuelMl) * Math.hypot(perLayer, perWater, content);
}
