import { screen, waitFor, within } from "@testing-library/preact";
import { describe, expect, test } from "vitest";
import { dateTime } from "../../src/app/format";
import { box, button, car, fact, life, measured, open, saved, type, value, wouldDo } from "./readingsScreen";
import { renderApp } from "./renderApp";

describe("the ways to measure", () => {
	test("are reached from the tank, and each leads to its screen and back", async () => {
		const app = await renderApp({ at: "#/tank", logs: [{ car, events: life }] });
		await app.user.click(await screen.findByRole("link", { name: "Enter a measurement" }));
		await waitFor(() => expect(location.hash).toBe("#/measure"));
		const names = ["Ethanol analyser", "Water test", "The car’s own report", "Fuel trims", "A look at the gauge"];
		for (const name of names) {
			await app.user.click(await screen.findByRole("link", { name: new RegExp(name) }));
			expect(await screen.findByRole("heading", { level: 2, name: new RegExp(name) })).toBeTruthy();
			const steps = within(screen.getByRole("region", { name: new RegExp(name) })).getAllByRole("listitem");
			expect(steps.length).toBeGreaterThan(1);
			await app.user.click(screen.getByRole("link", { name: "Other ways to measure" }));
		}
	});

	test("are offered where the address names none of them", async () => {
		await open("toString");
		await screen.findByRole("heading", { name: "Enter a measurement" });
	});
});

describe("an analyser's reading", () => {
	test("is shown in what it would do, saved as shown, and can be taken back", async () => {
		const app = await open("analyser");
		(await wouldDo()).getByText(/^Once the figures above are complete/);
		await type(app, "It shows, % ethanol", "24,5");
		await (await wouldDo()).findByText("It fits the account.");
		const shown = /(\d+) %$/.exec(await fact("Most likely"))?.[1];
		expect(await fact("9 in 10")).toMatch(/^\d+–\d+ % →became \d+–\d+ %$/);
		expect((await wouldDo()).getByRole("img", { name: /^Twenty equally likely/ })).toBeTruthy();

		const event = await saved(app);
		expect(event).toMatchObject({ of: "tank", value: 0.245, sd: 0.025, method: "ethanol analyser" });
		expect(Date.parse(event.at)).toBe(app.clock.now);
		await screen.findByText(/^Saved\. (About .+ became about|It stays about)/);
		await waitFor(() => expect(app.model.state().now?.last.id).toBe(event.id));
		const after = app.model.state().now?.estimate.median ?? 0;
		// A young account is kept with more particles than the preview draws.
		expect(Math.abs(after * 100 - Number(shown))).toBeLessThan(1);

		await app.user.click(button("Undo"));
		await waitFor(async () => expect((await app.events()).filter(({ kind }) => kind === "void")).toHaveLength(1));
	});

	test("that does not fit the account is called out before it is saved, and may be saved", async () => {
		const app = await open("analyser");
		await type(app, "It shows, % ethanol", "80");
		await (await wouldDo()).findByText(/^It does not fit the account: such a reading had less than 1 chance in 100\./);
		await type(app, "It shows, % ethanol", "25");
		await (await wouldDo()).findByText("It fits the account.");
		await type(app, "It shows, % ethanol", "80");
		expect(await saved(app)).toMatchObject({ value: 0.8 });
		await screen.findByText("The last reading does not fit the account");
	});

	test("that is none says so beside its field, goes there, and saves nothing", async () => {
		const app = await open("analyser");
		await box("It shows, % ethanol");
		await app.user.click(button("Save it"));
		const field = await box("It shows, % ethanol");
		expect(field).toHaveProperty("ariaInvalid", "true");
		await waitFor(() => expect(document.activeElement).toBe(field));
		expect(field.getAttribute("aria-describedby")).toBe(screen.getByText(/^Type a number here, such as 30/).id);
		await type(app, "It shows, % ethanol", "310");
		screen.getByText(/^It must lie between 0 and 100 %/);
		await type(app, "It shows, % ethanol", "31");
		await type(app, "Give or take, points", "0");
		screen.getByText(/^It must lie between 0\.1 and 25 points/);
		await app.user.click(button("Save it"));
		expect(measured(await app.events())).toEqual([]);
		expect(await value("It shows, % ethanol")).toBe("31");
	});

	test("may be of an earlier time, and is previewed as of then", async () => {
		const app = await open("analyser");
		await type(app, "It shows, % ethanol", "10");
		await (await wouldDo()).findByText(/^It does not fit the account/);
		await app.user.click(screen.getByText("When: now"));
		const when = screen.getByLabelText("When");
		await app.user.clear(when);
		await app.user.type(when, "2026-05-01T20:00");
		when.dispatchEvent(new Event("change", { bubbles: true }));
		await (await wouldDo()).findByText("It fits the account.");
		const event = await saved(app);
		expect(new Date(event.at).toISOString()).toMatch(/^2026-05-0[12]T/);
		expect(Date.parse(event.at)).toBeLessThan(Date.parse(life[1].at));
	});

	test("keeps its uncertainty for the next time, on this device", async () => {
		let app = await open("analyser");
		expect(await value("Give or take, points")).toBe("2.5");
		await type(app, "It shows, % ethanol", "25");
		await type(app, "Give or take, points", "1.5");
		expect(await saved(app)).toMatchObject({ sd: 0.015 });
		await waitFor(() => expect(app.model.state().settings.instruments).toEqual({ analyser: "1.5" }));
		app = await app.restart();
		location.hash = "#/measure/analyser";
		expect(await value("Give or take, points")).toBe("1.5");
		expect(await value("It shows, % ethanol")).toBe("");
		const steps = screen.getByRole("region", { name: /^Ethanol analyser/ }).querySelector("details");
		expect(steps?.open).toBe(false);
	});

	test("is written once, and the same, where the disk fails at first", async () => {
		let fail = true;
		const tried: string[] = [];
		const app = await open("analyser", {
			wrap: (keeper) => ({
				...keeper,
				append: async (carId, events, options) => {
					tried.push(JSON.stringify(events));
					if (fail) throw new Error("This device has no room left, so nothing was saved.");
					return keeper.append(carId, events, options);
				},
			}),
		});
		await type(app, "It shows, % ethanol", "25");
		await app.user.click(button("Save it"));
		await screen.findByText(/no room left/);
		// The second try will be of the same time: no "now" any more.
		await screen.findByText(`When: ${dateTime(new Date(app.clock.now).toISOString())}`);
		expect(await value("It shows, % ethanol")).toBe("25");
		fail = false;
		app.clock.now += 90_000;
		await saved(app);
		expect(tried).toHaveLength(2);
		expect(tried[1]).toBe(tried[0]);
	});

	test("is saved once by two taps, and the form may be started over", async () => {
		const app = await open("analyser");
		await type(app, "It shows, % ethanol", "25");
		await app.user.click(button("Start this form over"));
		expect(await value("It shows, % ethanol")).toBe("");
		await app.user.click(button("Undo"));
		await waitFor(async () => expect(await value("It shows, % ethanol")).toBe("25"));
		await app.user.dblClick(button("Save it"));
		await waitFor(() => expect(location.hash).toBe("#/tank"));
		expect(measured(await app.events())).toHaveLength(1);
	});
});

describe("a look at the gauge", () => {
	test("narrows what is left, and may note the odometer", async () => {
		const app = await open("gauge");
		await screen.findByRole("slider", { name: "Fuel gauge" });
		await app.user.click(button("Save it"));
		const fault = screen.getByText("Say where the gauge stands.");
		await waitFor(() => expect(document.activeElement).toBe(fault));
		for (let i = 0; i < 3; i++) await app.user.click(button("Fuel gauge: a step less"));
		await type(app, "Odometer, km", "84210");
		await (await wouldDo()).findByText("It fits the account.");
		expect(await fact("In the tank")).toMatch(/^\d+\.\d–\d+\.\d L →became \d+\.\d–\d+\.\d L$/);
		expect(await saved(app)).toMatchObject({ kind: "level", gauge: 0.375, odometerKm: 84210 });
	});

	test("counts in miles where fuel is counted in gallons", async () => {
		const app = await open("gauge");
		await app.model.saveSettings({ units: { car: "gal" } });
		location.hash = "#/measure";
		await app.user.click(await screen.findByRole("link", { name: /^A look at the gauge/ }));
		await screen.findByRole("slider", { name: "Fuel gauge" });
		await app.user.click(button("Fuel gauge: a step more"));
		await type(app, "Odometer, mi", "1000");
		const event = await saved(app);
		expect("odometerKm" in event && event.odometerKm).toBeCloseTo(1609.344, 6);
	});
});

describe("a measurement that was typed long ago", () => {
	const hour = 3_600_000;

	test("is of the time when it was typed, and says so", async () => {
		let app = await open("analyser");
		const typedAt = app.clock.now;
		await type(app, "It shows, % ethanol", "24");
		app.clock.now += 1 * hour;
		app = await app.restart();
		expect(await value("It shows, % ethanol")).toBe("24");
		screen.getByText("When: now");
		app.clock.now += 60 * hour;
		app = await app.restart();
		expect(await value("It shows, % ethanol")).toBe("24");
		screen.getByText(`When: ${dateTime(new Date(typedAt).toISOString())}`);
		expect(Date.parse((await saved(app)).at)).toBe(typedAt);
	});

	test("is of now once the driver says that, and so is one that was emptied again", async () => {
		let app = await open("analyser");
		await type(app, "It shows, % ethanol", "24");
		await type(app, "It shows, % ethanol", "");
		app.clock.now += 60 * hour;
		app = await app.restart();
		await type(app, "It shows, % ethanol", "24");
		screen.getByText("When: now");
		app.clock.now += 60 * hour;
		app = await app.restart();
		await app.user.click(await screen.findByText(/^When: /, { selector: "summary" }));
		await app.user.click(button("Now"));
		screen.getByText("When: now");
		expect(Date.parse((await saved(app)).at)).toBe(app.clock.now);
	});

	test("is of the time when it was typed even if the app lay open all the while", async () => {
		const app = await open("analyser");
		const typedAt = app.clock.now;
		await type(app, "It shows, % ethanol", "24");
		app.clock.now += 3 * hour;
		await type(app, "Give or take, points", "2");
		screen.getByText(`When: ${dateTime(new Date(typedAt).toISOString())}`);
		expect(Date.parse((await saved(app)).at)).toBe(typedAt);
	});
});

test("every half-typed measurement is there again after the app was killed", async () => {
	let app = await renderApp({ at: "#/measure", logs: [{ car, events: life }] });
	const typed: readonly (readonly [kind: string, field: string, text: string])[] = [
		["analyser", "It shows, % ethanol", "2"],
		["reported", "Shown, % ethanol", "30."],
		["tube", "Lower layer after settling, mL", "63,"],
		["trim", "Short term, bank 1, %", "-"],
		["gauge", "Odometer, km", "84x"],
	];
	for (const [kind, field, text] of typed) {
		location.hash = `#/measure/${kind}`;
		await type(app, field, text);
	}
	app = await app.restart();
	for (const [kind, field, text] of typed) {
		location.hash = `#/measure/${kind}`;
		expect(await value(field)).toBe(text);
	}
	expect(measured(await app.events())).toEqual([]);
});
