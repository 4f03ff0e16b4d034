/** What measures: how sure it is, and what it would show if it were perfect. */
import type { Column } from "../estimator/belief";
import { fuelDemand } from "../fuel";
import { baselineShare } from "../readings/trims";
import { methodSd } from "../readings/waterTube";
import type { SoundedStanding } from "./standing";
import type { Measure } from "./worth";

export interface Instrument {
	/** Standard uncertainty where it should show `truth`, in the unit of what it shows. */
	sd(truth: number): number;
	/** Whether one reading in fifty is taken to be rubbish, as readings of a content are. */
	readonly rubbish: boolean;
	/** What it should show on a particle of the standing that ends with the content `ended`. */
	truth(particle: number, ended: number): number;
}

/** All but the click, which is no reading but another fill. */
export type Reading = Exclude<Measure, { readonly kind: "click" }>;

/** Standard uncertainty of an analyser or sensor gauge, volume fraction (common practice). */
const analyserSd = 0.025;
/** Standard uncertainty of a fuel trim, fraction of the fuel demand (common practice), while the car's baseline is unknown. */
const trimSd = 0.03;

/** What is left of it where the baseline is known. */
const repeatSd = trimSd * Math.sqrt(1 - baselineShare ** 2);

export function instrumentOf(reading: Reading, { content, delivered, gauge, belief }: SoundedStanding): Instrument {
	const ofTank = (after: boolean) => (particle: number, ended: number) => (after ? ended : content[particle]);
	switch (reading.kind) {
		case "pumpSample": {
			const pump = delivered[reading.offer];
			return { sd: methodSd, rubbish: true, truth: (particle) => pump[particle] };
		}
		case "gauge": {
			if (!gauge) throw new RangeError("the gauge can't be noted any more");
			return { sd: () => gauge.sd, rubbish: false, truth: (particle) => gauge.mean[particle] };
		}
		case "tankSample":
			return { sd: methodSd, rubbish: true, truth: ofTank(reading.when === "after") };
		case "analyser":
			return { sd: () => analyserSd, rubbish: true, truth: ofTank(reading.when === "after") };
		case "trim": {
			const tank = ofTank(reading.when === "after");
			const { calibratedFor } = reading;
			const known = belief.baselines.get(calibratedFor);
			const own = known ? Math.sqrt(meanVariance(known.variance, belief.weight) + repeatSd ** 2) : trimSd;
			const demand = (particle: number, ended: number) => fuelDemand(tank(particle, ended), calibratedFor);
			const truth = known
				? (particle: number, ended: number) => demand(particle, ended) * (1 + known.mean[particle]) - 1
				: (particle: number, ended: number) => demand(particle, ended) - 1;
			return { sd: () => own, rubbish: true, truth };
		}
	}
}

function meanVariance(variance: Column, weight: Column): number {
	let [all, sum] = [0, 0];
	for (let i = 0; i < weight.length; i++) {
		all += weight[i];
		sum += weight[i] * variance[i];
	}
	return sum / all;
}
