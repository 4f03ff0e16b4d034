/** What is typed on the fuel-system card keeps its meaning and is not lost. */
import { screen } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import { aCar, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const sure = aStart({ contents: { value: 0.3, sd: 0.01 } });
const field = (name: string) => screen.getByLabelText(name, { selector: "input" });
const unit = (name: string) => screen.getByRole("combobox", { name: `Unit of “${name}”` });

async function open(wrap?: (keeper: KeeperPort) => KeeperPort): Promise<RenderedApp> {
	const app = await renderApp({
		at: "#/engine",
		now: Date.parse("2026-06-10T15:30:00Z"),
		logs: [{ car: aCar(), events: [sure] }],
		...(wrap ? { wrap } : {}),
	});
	await screen.findByRole("heading", { name: "Limits of the fuel system" });
	return app;
}

async function type(app: RenderedApp, typed: Record<string, string>): Promise<void> {
	for (const [name, text] of Object.entries(typed)) {
		await app.user.clear(field(name));
		await app.user.type(field(name), text);
	}
}

test("a unit chosen beside one pressure leaves the meaning of the other alone", async () => {
	const app = await open();
	await type(app, {
		"Pressure at which that flow is stated, psi": "3",
		"Pressure across the injector at full load, psi": "58",
	});
	await app.user.selectOptions(unit("Pressure at which that flow is stated"), "bar");
	expect(field("Pressure at which that flow is stated, bar")).toHaveProperty("value", "3");
	expect(field("Pressure across the injector at full load, bar")).toHaveProperty("value", "3.999");
	await type(app, { "Pressure at which that flow is stated, bar": "3 or so" });
	await app.user.selectOptions(unit("Pressure across the injector at full load"), "kPa");
	expect(field("Pressure across the injector at full load, kPa")).toHaveProperty("value", "3.999");
	expect(field("Pressure at which that flow is stated, kPa")).toHaveProperty("value", "3 or so");
});

test("what is typed while the card is being saved stays, on the screen and on disk", async () => {
	let written = () => {};
	const disk = new Promise<void>((resolve) => {
		written = resolve;
	});
	const app = await open((keeper) => ({
		...keeper,
		saveCar: async (car) => {
			await disk;
			return keeper.saveCar(car);
		},
	}));
	await type(app, { "Number of injectors": "4" });
	await app.user.click(screen.getByRole("button", { name: "Save the card" }));
	await type(app, { "Largest power, hp": "250" });
	written();
	await screen.findByText("The fuel-system card is saved.");
	expect((await app.store.cars())[0].fuelSystem).toEqual({ injectorCount: 4 });
	expect(field("Largest power, hp")).toHaveProperty("value", "250");
	await app.restart();
	expect(await screen.findByLabelText("Largest power, hp", { selector: "input" })).toHaveProperty("value", "250");
});
