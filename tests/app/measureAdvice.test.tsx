import { render, screen, waitFor, within } from "@testing-library/preact";
import { useState } from "preact/hooks";
import { expect, test } from "vitest";
import { AppContext } from "../../src/app/app";
import { MeasureAdvice } from "../../src/app/components/MeasureAdvice";
import type { KeeperPort } from "../../src/app/keeperPort";
import { measureSentences } from "../../src/app/measureWords";
import { createToasts } from "../../src/app/toasts";
import type { Measures } from "../../src/domain/plan/worth";
import type { PlanAsk } from "../../src/keeper/view";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import { renderApp } from "./renderApp";

const now = Date.parse("2026-06-20T15:30:00Z");
const life = [
	aStart({ at: "2026-06-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({ id: "f1", at: "2026-06-10T12:00:00+02:00", product: { id: "flex-51-83", range: [0.51, 0.83] }, litres: 12 }),
] as never;
const logs = [{ car: aCar(), events: life }];

const some: Measures = {
	filling: false,
	width: 0.12,
	inside: 0.6,
	worths: [
		{ measure: { kind: "tankSample", when: "before" }, narrowing: 0.5, gain: 0 },
		{ measure: { kind: "analyser", when: "before" }, narrowing: 0.25, gain: 0 },
		{ measure: { kind: "gauge" }, narrowing: 0.01, gain: 0 },
	],
};

function answering(answer: () => Promise<Measures>) {
	const asks: PlanAsk[] = [];
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		measures: (_car, ask) => {
			asks.push(ask);
			return answer();
		},
	});
	return { asks, wrap };
}
const summary = () => screen.findByText("What would settle it?");
const unfolded = async () => within((await summary()).closest("details") as HTMLElement);

test("what would settle it is asked once it is opened, and drawn beside each sentence", async () => {
	const { asks, wrap } = answering(async () => some);
	const app = await renderApp({ at: "#/tank", now, logs, wrap });
	await summary();
	expect(asks).toEqual([]);
	await app.user.click(await summary());
	const advice = await unfolded();
	await advice.findByText(/9 in 10 span 12.points/);
	const items = advice.getAllByRole("listitem");
	expect(items.map(({ textContent }) => textContent)).toEqual(measureSentences(some));
	expect(items.map((item) => item.querySelector(".gone")?.getAttribute("width"))).toEqual(["50", "25"]);
	expect(asks).toHaveLength(1);
	expect(asks[0]).toMatchObject({ offers: [], poured: [], instead: [] });
});

test("the account itself answers with what a water test would take off", { timeout: 60_000 }, async () => {
	const app = await renderApp({ at: "#/tank", now, logs });
	await app.user.click(await summary());
	const advice = await unfolded();
	await advice.findByText(/water test of the tank/);
	const widths = advice
		.getAllByRole("listitem")
		.map((item) => Number(item.querySelector(".gone")?.getAttribute("width")));
	expect(Math.max(...widths)).toBeGreaterThan(20);
	expect(Math.max(...widths)).toBeLessThanOrEqual(100);
});

test("where no measurement is worth the trouble, that is said", async () => {
	const { wrap } = answering(async () => ({ ...some, worths: some.worths.slice(2) }));
	const app = await renderApp({ at: "#/tank", now, logs, wrap });
	await app.user.click(await summary());
	await (await unfolded()).findByText(/^Nothing that you could measure now/);
});

const planCar = aCar({ calibrations: [aCalibration()] });

test("the plan with flex fuel says what would settle it once that is opened", { timeout: 60_000 }, async () => {
	const app = await renderApp({ at: "#/plan", now, logs: [{ car: planCar, events: life }] });
	await app.user.click(await summary());
	const advice = await unfolded();
	await advice.findByText(/doubt about the content after this fill/);
	const sentences = advice.getAllByRole("listitem").map(({ textContent }) => textContent);
	expect(sentences.length).toBeGreaterThan(0);
	for (const sentence of sentences) expect(sentence).toMatch(/ would .*\.$/);
});

test("the plan's advice starts from the plan's own chance, and asks with the plan's question", async () => {
	const measures: Measures = {
		filling: true,
		width: 0.12,
		inside: 0.6,
		worths: [{ measure: { kind: "gauge" }, narrowing: 0.5, gain: 0.1 }],
	};
	const { asks, wrap } = answering(async () => measures);
	const calibration = planCar.calibrations[0];
	const plan = {
		pours: [{ product: { id: "flex-51-83", range: [0.51, 0.83] }, litres: 9, toClick: true }],
		chances: { below: 0.1, inside: 0.8, above: 0.1 },
		content: { median: 0.3, low: 0.26, high: 0.33 },
		cost: null,
		swapped: null,
	};
	const planned = { ok: true, value: { plan, verdict: "inside", reach: [0.1, 0.6] } };
	const planAsks: PlanAsk[] = [];
	const app = await renderApp({
		at: "#/plan",
		now,
		logs: [{ car: planCar, events: life }],
		wrap: (keeper) => ({
			...wrap(keeper),
			plan: async (_car, ask) => {
				planAsks.push(ask);
				return { planned, calibration, dots: null, otherwise: null } as never;
			},
		}),
	});
	await summary();
	expect(asks).toEqual([]);
	await app.user.click(await summary());
	await (await unfolded()).findByText(/from 16 in 20 to 18 in 20/);
	expect(asks).toEqual([planAsks.at(-1)]);
});

test("what can't be reckoned is said, and the rest of the screen stays", async () => {
	const { wrap } = answering(() => Promise.reject(new Error("no memory")));
	const app = await renderApp({ at: "#/tank", now, logs, wrap });
	await app.user.click(await summary());
	await (await unfolded()).findByText(/could not be reckoned/);
	screen.getByRole("heading", { name: /^Boost/ });
});

test("a stop is asked about anew when it changes, but not for every minute", async () => {
	const { asks, wrap } = answering(async () => ({ ...some, filling: true }));
	const app = await renderApp({ at: "#/car", now, logs, wrap });
	const ask = (fields: object): PlanAsk => ({
		visit: { stop: "s", at: "2026-06-20T15:30:00Z", ...fields },
		poured: [],
		instead: [],
		offers: [],
		fullness: { kind: "click" },
		targetCalibration: null,
		handling: { step: 1, minimum: 0 } as never,
		ids: ["p"],
	});
	let change: (next: PlanAsk) => void = () => {};
	function Host() {
		const [asked, setAsked] = useState(ask({}));
		change = setAsked;
		return <MeasureAdvice ask={asked} />;
	}
	render(
		<AppContext.Provider value={{ model: app.model, toasts: createToasts(), now: () => now }}>
			<Host />
		</AppContext.Provider>,
	);
	await screen.findByText(/doubt about the content after this fill/);
	change(ask({ at: "2026-06-20T15:31:00Z" }));
	change(ask({ at: "2026-06-20T15:32:00Z", gauge: 0.25 }));
	await waitFor(() => expect(asks).toHaveLength(2));
	expect(asks[1].visit).toMatchObject({ gauge: 0.25, at: "2026-06-20T15:32:00Z" });
});

test("how far the fuel goes unfolds on the tank's screen, or says what it takes to know it", {
	timeout: 60_000,
}, async () => {
	const app = await renderApp({ at: "#/tank", now, logs });
	await app.user.click(await screen.findByText("How far it goes"));
	await screen.findByText(/learned from the odometer at two stops/);
});
