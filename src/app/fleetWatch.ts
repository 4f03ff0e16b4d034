/** Looks after all cars once the one on the screen is reckoned, and after every change: badge, notification, the list. */
import type { FleetCar } from "../keeper/glance";
import { notify, setBadge, tidingsOf } from "./alerts";
import { fleetOf, isOver } from "./attention";
import type { Fleet } from "./fleet";
import type { KeeperPort } from "./keeperPort";
import type { Model } from "./model";
import { wordsReady } from "./words/language";

type Desk = Pick<Model, "state" | "allCars" | "fleetSeen">;

/** Ids of the cars that could not be reckoned as they stand. */
const failedOn = new WeakMap<Desk, Set<string>>();

/** As they were last reckoned; quick. */
export async function lookAtFleet(model: Desk, now: number): Promise<Fleet> {
	const failed = failedOn.get(model);
	const cars = await model.allCars();
	const fleet = fleetOf(
		cars.map((car) => (failed?.has(car.carId) && !car.current ? { ...car, failed: true } : car)),
		now,
	);
	model.fleetSeen(fleet);
	setBadge(fleet.over.length);
	return fleet;
}

/** Resolves once all cars were reckoned that had changed. */
export async function watchFleet(
	model: Desk,
	keeper: Pick<KeeperPort, "catchUp" | "subscribe">,
	now: () => number,
	report: (error: unknown) => void,
): Promise<void> {
	/** What was told of each car, or seen when the app was opened. */
	const told = new Map<string, string>();
	const failed = new Set<string>();
	failedOn.set(model, failed);
	let waiting = false;
	let queue: Promise<void> = Promise.resolve();

	async function follow(): Promise<void> {
		waiting = false;
		let { cars } = await lookAtFleet(model, now());
		for (const { carId } of cars.filter(({ current }) => !current)) {
			try {
				await keeper.catchUp(carId);
				failed.delete(carId);
			} catch (error) {
				// The others are looked after all the same.
				failed.add(carId);
				report(error);
			}
			cars = (await lookAtFleet(model, now())).cars;
			tellNews(cars);
		}
		tellNews(cars);
	}
	function tellNews(cars: readonly FleetCar[]): void {
		for (const car of cars.filter(({ current }) => current)) {
			const before = told.get(car.carId);
			const tidings = tidingsOf(car);
			told.set(car.carId, tidings);
			// A car that was just opened has no news: the screen says it all.
			const news = before !== undefined && before !== tidings && isOver(car);
			if (news && model.state().settings.notify && !isSeen(car.carId)) notify(car).catch(report);
		}
	}
	/** Whoever looks at the car's own screen has been told. */
	function isSeen(carId: string): boolean {
		return document.visibilityState === "visible" && model.state().car?.id === carId;
	}
	function soon(): Promise<void> {
		// Several changes at once are followed once.
		if (!waiting) queue = queue.then(follow).catch(report);
		waiting = true;
		return queue;
	}
	await wordsReady();
	await keeper.subscribe(() => void soon());
	// Days pass while the app is open.
	document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && void soon());
	await soon();
}
