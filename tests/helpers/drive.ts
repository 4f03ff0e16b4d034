/** Made-up drives as a logger would record them, with a fuel trim that is known. */
import { type Seeds, seedsFor, uniform } from "../../src/domain/random";

export interface Drive {
	readonly seed: string;
	/** The fuel's own trim, K(E)/K(E₀) − 1. */
	readonly trim: number;
	readonly seconds?: number;
	/** Rows a second. */
	readonly rate?: number;
	/** Coolant at the beginning, °C. */
	readonly coolantFrom?: number;
	/** How far each bank lies off, one or two. */
	readonly banks?: readonly number[];
	/** Spread of the error that every load and speed has of its own. */
	readonly perPoint?: number;
	/** Amplitude of the closed loop's own beat. */
	readonly beat?: number;
	/** Trims are not at work: open loop throughout. */
	readonly frozen?: boolean;
	/** Learned trims are carried into open loop. */
	readonly carried?: boolean;
	/** Shares of the segments; all steady unless named. */
	readonly pulls?: boolean;
	/** The foot never rests. */
	readonly restless?: boolean;
	/** Ethanol content the car reports, fraction. */
	readonly ethanol?: number;
}

export interface DriveRow {
	readonly time: number;
	readonly rpm: number;
	readonly speed: number;
	readonly coolant: number;
	readonly throttle: number;
	readonly load: number;
	readonly manifold: number;
	readonly short: readonly number[];
	readonly long: readonly number[];
	readonly lambda: number;
	readonly commanded: number;
	readonly closed: boolean;
	readonly ethanol: number;
}

type Mode = "idle" | "speedUp" | "cruise" | "coast" | "pull";

/** A standard normal. */
export function normal(seeds: Seeds): number {
	return Math.sqrt(-2 * Math.log(uniform(seeds))) * Math.cos(2 * Math.PI * uniform(seeds));
}

/** Rows one after another, so that a log of any length needs no memory. */
export function* driven(drive: Drive): Generator<DriveRow> {
	const { seed, trim, seconds = 900, rate = 10, coolantFrom = 85, banks = [0], perPoint = 0.01, beat = 0.02 } = drive;
	const seeds = seedsFor(seed);
	const between = (low: number, high: number) => low + (high - low) * uniform(seeds);
	let mode: Mode = "idle";
	let until = 5;
	let begun = 0;
	let target = 80;
	let point = 0;
	let speed = 0;
	let throttle = 0.15;
	let long = trim;
	let mixture = 1;
	const dt = 1 / rate;
	for (let i = 0; i < seconds * rate; i++) {
		const time = i * dt;
		const coolant = 92 - (92 - coolantFrom) * Math.exp(-time / 240) + 0.3 * Math.sin(time / 37);
		if (time >= until) {
			mode = nextMode(mode, uniform(seeds), drive.pulls ?? false);
			begun = time;
			until = time + lengthOf(mode, between);
			if (mode === "speedUp") target = between(40, 120);
			if (mode === "cruise") point = perPoint * normal(seeds);
		}
		const jitter = drive.restless ? 0.25 * Math.sin(time * 0.9) : 0.004 * normal(seeds);
		throttle += (throttleFor(mode, speed) + jitter - throttle) * Math.min(1, dt / 0.4);
		speed = Math.max(0, speed + speedChange(mode, speed, target) * dt);
		const load = Math.min(1, Math.max(0.1, throttle * 1.6 + 0.05)) + 0.005 * normal(seeds);
		const rpm = speed < 5 ? 780 + 15 * normal(seeds) : 900 + speed * 17 + 10 * normal(seeds);
		const cut = mode === "coast" && time - begun > 1;
		const open = drive.frozen || mode === "pull" || cut || coolant < 45;
		const commanded = mode === "pull" && time - begun > 0.5 ? 0.85 : 1;
		const here = trim + point + (mode === "idle" ? 0.05 : 0) + (coolant < 70 ? 0.04 : 0);
		const transient = mode === "speedUp" ? 0.06 * Math.sin(time * 2) : 0;
		long += (open ? 0 : (here - long) / 90) * dt;
		const learned = Math.round(long * 128) / 128;
		const wave = beat * Math.sign(Math.sin(2 * Math.PI * 0.8 * time));
		const short = banks.map((off) =>
			open
				? 0
				: Math.round(((1 + here + off + transient) / (1 + learned) - 1 + wave + 0.003 * normal(seeds)) * 128) / 128,
		);
		const aim = cut ? 2 : open ? commanded * ((1 + trim) / (drive.carried ? 1 + learned : 1)) : 1;
		mixture += (aim - mixture) * Math.min(1, dt / 0.25);
		yield {
			time,
			rpm,
			speed,
			coolant,
			throttle,
			load,
			manifold: 25 + 75 * load,
			short,
			long: banks.map(() => learned),
			lambda: mixture + 0.008 * normal(seeds),
			commanded,
			closed: !open,
			ethanol: drive.ethanol ?? 0,
		};
	}
}

function nextMode(mode: Mode, chance: number, pulls: boolean): Mode {
	switch (mode) {
		case "idle":
			return "speedUp";
		case "speedUp":
			return "cruise";
		case "cruise":
			return pulls && chance < 0.4 ? "pull" : chance < 0.7 ? "coast" : "speedUp";
		case "pull":
			return "coast";
		case "coast":
			return chance < 0.5 ? "idle" : "speedUp";
	}
}

function lengthOf(mode: Mode, between: (low: number, high: number) => number): number {
	switch (mode) {
		case "idle":
			return between(10, 40);
		case "speedUp":
			return between(5, 12);
		case "cruise":
			return between(12, 90);
		case "pull":
			return between(4, 7);
		case "coast":
			return between(6, 12);
	}
}

function throttleFor(mode: Mode, speed: number): number {
	const steady = 0.14 + speed / 700;
	return { idle: 0.12, speedUp: 0.38, cruise: steady, coast: 0.08, pull: 0.95 }[mode];
}

function speedChange(mode: Mode, speed: number, target: number): number {
	switch (mode) {
		case "speedUp":
			return (target - speed) / 4;
		case "cruise":
			return (target - speed) / 20;
		case "pull":
			return 9;
		case "coast":
			return -6;
		case "idle":
			return -speed;
	}
}
