/** Logs whose last entries contradict each other, and the app opened on them. */
import { screen } from "@testing-library/preact";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { Explanation } from "../../src/domain/doubt/explanation";
import type { LogEvent } from "../../src/domain/event";
import type { Contradiction } from "../../src/keeper/view";
import { aCar, aFill, aLevel, aStart, aTankReading } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

export const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
export const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;

const at = (day: string, second = 0) => `2026-05-${day}T12:00:0${second}+02:00`;
export const start = aStart({ at: at("01"), contents: { value: 0.3, sd: 0.025 }, gauge: 0.3 });
const pour = (id: string, day: string, fields: Record<string, unknown>) =>
	aFill({ id, stop: id.slice(0, 2), at: at(day, id.endsWith("b") ? 1 : 0), place: "Harbour", ...fields });
const first = [
	pour("s1a", "08", { product: flex, litres: 12, gauge: 0.3, odometerKm: 84_000 }),
	pour("s1b", "08", { product: e10, litres: 28.5, toClick: true }),
];
const second = (product: unknown, litres = 12) => [
	pour("s2a", "15", { product: flex, litres, gauge: 0.35, odometerKm: 84_400 }),
	pour("s2b", "15", { product, litres: 25.5, toClick: true }),
];
const reading = (value: number) =>
	aTankReading({ id: "r", at: at("20"), value, sd: 0.025, method: "ethanol analyser" });

/** The last fill was E10, and not flex fuel. */
export const wrongProduct: LogEvent[] = [start, ...first, ...second(flex), reading(0.28)];
/** The decimal point of the first fill of the last stop slipped. */
export const tenfold: LogEvent[] = [start, ...first, ...second(e10, 1.2), reading(0.31)];
/** Between two looks at the gauge the tank got fuller. */
export const fuller: LogEvent[] = [
	start,
	...first,
	aLevel({ id: "g1", at: at("10"), gauge: 0.2 }),
	aLevel({ id: "g2", at: at("11"), gauge: 0.85, odometerKm: 84_100 }),
];
/** What was said of the start and the reading do not go together. */
export const wrongStart: LogEvent[] = [{ ...start, contents: { value: 0.1, sd: 0.01 } } as never, reading(0.3)];

export const car = aCar({ calibrations: [] });

type Options = Parameters<typeof renderApp>[0];

export function openDoubt(events: readonly LogEvent[], options: Options = {}): Promise<RenderedApp> {
	return renderApp({
		at: "#/doubt",
		logs: [{ car, events }],
		now: Date.parse("2026-05-21T10:00:00+02:00"),
		...options,
	});
}

/** As if an explanation were the likeliest: one of the model's own, moved to the front. */
export function likeliest(chosen: Partial<Explanation>): (keeper: KeeperPort) => KeeperPort {
	const isChosen = ({ explanation }: Contradiction["doubt"]["explanations"][number]) =>
		Object.entries(chosen).every(([name, value]) => explanation[name as keyof Explanation] === value);
	return (keeper) => ({
		...keeper,
		contradiction: async (carId) => {
			const found = await keeper.contradiction(carId);
			if (!found) return found;
			const { explanations } = found.doubt;
			const moved = explanations.filter(isChosen);
			if (moved.length === 0) throw new Error(`the model has no explanation ${JSON.stringify(chosen)}`);
			const sorted = [...moved, ...explanations.filter((weighed) => !isChosen(weighed))];
			return { ...found, doubt: { ...found.doubt, explanations: sorted } };
		},
	});
}

export async function firstExplanation(): Promise<HTMLElement> {
	await screen.findByRole("heading", { name: "What may be behind it" });
	return screen.getAllByRole("listitem").find((item) => item.querySelector("h3")) as HTMLElement;
}
