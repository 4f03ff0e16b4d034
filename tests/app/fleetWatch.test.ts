import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { needOf } from "../../src/app/attention";
import type { Fleet } from "../../src/app/fleet";
import { watchFleet } from "../../src/app/fleetWatch";
import { firstSettings } from "../../src/app/settings";
import type { FleetCar } from "../../src/keeper/glance";
import { aCalibration } from "../helpers/logs";

const now = Date.parse("2026-06-20T12:00:00Z");
const setAppBadge = vi.fn(async (_count: number) => {});
const clearAppBadge = vi.fn(async () => {});
const showNotification = vi.fn(async (_title: string, _options: NotificationOptions) => {});
let visibility: DocumentVisibilityState = "visible";

beforeEach(() => {
	visibility = "visible";
	Object.assign(navigator, { setAppBadge, clearAppBadge });
	Object.defineProperty(navigator, "serviceWorker", {
		configurable: true,
		value: { getRegistration: async () => ({ showNotification }) },
	});
	Object.defineProperty(document, "visibilityState", { configurable: true, get: () => visibility });
	vi.stubGlobal("Notification", { permission: "granted" });
});
afterEach(() => {
	vi.unstubAllGlobals();
	vi.clearAllMocks();
});

function aRow(carId: string, above: number, fields: Partial<FleetCar> = {}): FleetCar {
	const figures = { median: 0.3, low: 0.27, high: 0.33, below: 0, above } as never;
	const usual = { carId, name: `Car ${carId}`, figures, calibration: aCalibration(), surprise: null, grave: false };
	return { ...usual, lastAt: new Date(now).toISOString(), current: true, checked: false, ...fields };
}

/** A phone that shows the car "a"; `change`: entries come in. */
async function watching(first: readonly FleetCar[], { notify = true, broken = [] as string[] } = {}) {
	let cars = first;
	let change = (_carId: string | null): void => {};
	const caughtUp: string[] = [];
	const seen: string[][] = [];
	const reported: unknown[] = [];
	let failed: string[] = [];
	const model = {
		state: () => ({ car: { id: "a" }, settings: { ...firstSettings, notify } }) as never,
		allCars: async () => [...cars],
		fleetSeen({ over, cars }: Fleet) {
			seen.push([...over]);
			failed = cars.filter((car) => needOf(car, now) === "failed").map(({ carId }) => carId);
		},
	};
	const keeper = {
		catchUp: async (carId: string) => {
			if (broken.includes(carId)) throw new Error(`${carId} can't be reckoned`);
			caughtUp.push(carId);
			cars = cars.map((car) => (car.carId === carId ? { ...car, current: true } : car));
		},
		subscribe: async (listener: (carId: string | null) => void) => {
			change = listener;
			return undefined;
		},
	};
	await watchFleet(
		model,
		keeper,
		() => now,
		(error) => (broken.length > 0 ? reported.push(error) : expect.unreachable(String(error))),
	);
	return {
		seen,
		caughtUp,
		reported,
		failed: () => failed,
		async come(next: readonly FleetCar[]) {
			cars = next;
			change(null);
			await new Promise((done) => setTimeout(done, 20));
		},
	};
}

test("the badge counts the cars over a limit or with a contradiction, and goes when none is", async () => {
	const phone = await watching([aRow("a", 0.9), aRow("b", 0, { grave: true }), aRow("c", 0)]);
	expect(setAppBadge).toHaveBeenLastCalledWith(2);
	expect(phone.seen.at(-1)).toEqual(["a", "b"]);
	await phone.come([aRow("a", 0), aRow("b", 0, { grave: true, checked: true }), aRow("c", 0)]);
	expect(clearAppBadge).toHaveBeenCalledTimes(1);
	expect(showNotification).not.toHaveBeenCalled();
});

test("cars that have changed are reckoned, once, and nothing is news when the app is opened", async () => {
	const phone = await watching([aRow("a", 0.9), aRow("b", 0.9, { current: false })]);
	expect(phone.caughtUp).toEqual(["b"]);
	expect(showNotification).not.toHaveBeenCalled();
});

test("entries that come in and take another car over a limit are told, once", async () => {
	const phone = await watching([aRow("a", 0), aRow("b", 0)]);
	const over = [aRow("a", 0), aRow("b", 0.9, { current: false })];
	await phone.come(over);
	expect(showNotification).toHaveBeenCalledTimes(1);
	const [title, { body, tag, data } = {}] = showNotification.mock.calls[0] ?? [];
	expect(title).toBe("NOTICE: Too much ethanol: lean under boost");
	expect(body).toMatch(/^Car b: Chance of being above the window: 18 in 20/);
	expect(tag).toBe("b/blend");
	expect(data).toBe("b");
	await phone.come(over);
	expect(showNotification).toHaveBeenCalledTimes(1);
});

test("a contradiction is told, too", async () => {
	const phone = await watching([aRow("a", 0), aRow("b", 0)]);
	const surprise = { kind: "disagrees", chance: 0.001 } as const;
	await phone.come([aRow("a", 0), aRow("b", 0, { grave: true, surprise })]);
	expect(showNotification.mock.calls.map(([title]) => title)).toEqual([
		"NOTICE: The last entries contradict each other",
	]);
});

test("who looks at the car itself is told by the screen alone; who looks elsewhere, by a notification", async () => {
	const phone = await watching([aRow("a", 0)]);
	await phone.come([aRow("a", 0.2)]);
	expect(showNotification).not.toHaveBeenCalled();
	visibility = "hidden";
	await phone.come([aRow("a", 0.9)]);
	expect(showNotification).toHaveBeenCalledTimes(1);
});

test("nothing is told to those who did not ask for it, nor of a car that is new here", async () => {
	const silent = await watching([aRow("a", 0), aRow("b", 0)], { notify: false });
	await silent.come([aRow("a", 0), aRow("b", 0.9)]);
	const phone = await watching([aRow("a", 0)]);
	await phone.come([aRow("a", 0), aRow("b", 0.9)]);
	expect(showNotification).not.toHaveBeenCalled();
});

test("a car that can't be reckoned is said to be so, and the others are looked after all the same", async () => {
	const broken = ["b"];
	const phone = await watching([aRow("a", 0), aRow("b", 0, { current: false }), aRow("c", 0.9, { current: false })], {
		broken,
	});
	expect(phone.caughtUp).toEqual(["c"]);
	expect(phone.seen.at(-1)).toEqual(["c"]);
	expect(phone.failed()).toEqual(["b"]);
	expect(phone.reported).toEqual([new Error("b can't be reckoned")]);
	broken.splice(0, 1, "none");
	await phone.come([aRow("a", 0), aRow("b", 0.9, { current: false }), aRow("c", 0.9)]);
	expect(phone.failed()).toEqual([]);
	expect(phone.seen.at(-1)).toEqual(["b", "c"]);
});
