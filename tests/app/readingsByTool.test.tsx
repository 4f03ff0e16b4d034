import { screen, waitFor } from "@testing-library/preact";
import { describe, expect, test } from "vitest";
import { isoWithOffset } from "../../src/app/app";
import { waterTubeContent } from "../../src/domain/readings/waterTube";
import { aCalibration, aCar, aFlash } from "../helpers/logs";
import { box, button, fact, flex, life, measured, open, said, saved, spaces, type, value } from "./readingsScreen";
import { renderApp } from "./renderApp";

describe("the car's own report", () => {
	test("is typed as the percentage shown", async () => {
		const app = await open("reported");
		await type(app, "Shown, % ethanol", "30.2");
		expect(await saved(app)).toMatchObject({
			of: "tank",
			value: 0.302,
			sd: 0.08,
			method: expect.stringContaining("PID 52"),
		});
	});

	test("is typed as a raw byte, and what was understood is said", async () => {
		const app = await open("reported");
		await app.user.click(await screen.findByRole("radio", { name: /^Raw byte/ }));
		await type(app, "Shown, raw byte", "0x4D");
		await said(/^Understood: hexadecimal 4D, 77 of 255, which is 30\.2 %\.$/);
		await type(app, "Shown, raw byte", "41 52 4D");
		await said(/^Understood: the byte 4D of this response, 77 of 255, which is 30\.2 %\.$/);
		await type(app, "Shown, raw byte", "77");
		await said(/^Understood: decimal 77 of 255, which is 30\.2 %\.$/);
		await app.user.click(button(/^It is hexadecimal: 46\.7.%$/));
		await said(/^Understood: hexadecimal 77, 119 of 255, which is 46\.7 %\.$/);
		expect(await value("Shown, raw byte")).toBe("0x77");
		await type(app, "Shown, raw byte", "300");
		await app.user.click(button("Save it"));
		screen.getByText(/^A byte goes from 0 to 255/);
		await type(app, "Shown, raw byte", "4d");
		const event = await saved(app);
		expect("value" in event && event.value).toBeCloseTo(77 / 255, 12);
	});

	test("is surer from a sensor, unless the driver says otherwise", async () => {
		const app = await open("reported");
		expect(await value("Give or take, points")).toBe("8");
		await app.user.click(screen.getByRole("radio", { name: /^From a sensor/ }));
		expect(await value("Give or take, points")).toBe("3");
		await type(app, "Give or take, points", "4");
		await app.user.click(screen.getByRole("radio", { name: /^From the fuel trims/ }));
		expect(await value("Give or take, points")).toBe("4");
	});
});

describe("a water test", () => {
	const expected = (() => {
		const result = waterTubeContent({ fuelMl: 50, waterMl: 50, layerMl: 62 }, 0.5);
		if (!result.ok) throw new Error(result.error);
		return result.value;
	})();

	test("of the tank is corrected, with its uncertainty, and says so", async () => {
		const app = await open("tube");
		expect([await value("Fuel, mL"), await value("Water, mL")]).toEqual(["50", "50"]);
		await type(app, "Lower layer after settling, mL", "62");
		await said(/^26\.3 % ethanol, give or take 2\.2 points\. Without the correction it would read 24 %\.$/);
		const event = await saved(app);
		expect(event).toMatchObject({ of: "tank", value: expected.content, sd: expected.sd });
		expect(spaces("method" in event ? event.method : "")).toBe("water tube, 50 mL with 50 mL of water, layer 62 mL");
	});

	test("of a pump's fuel asks for the place, and tells what that pump gives", async () => {
		const app = await open("tube");
		await app.user.click(await screen.findByRole("radio", { name: /^A pump/ }));
		expect(button("Harbour").getAttribute("aria-pressed")).toBe("true");
		await app.user.click(button("Not named"));
		await type(app, "Lower layer after settling, mL", "86");
		await app.user.click(button("Save it"));
		const fault = screen.getByText("Name the place where it was taken.");
		await waitFor(() => expect(document.activeElement).toBe(fault));
		await app.user.type(await box("A new place"), "Mill Road");
		await app.user.click(button("Use it"));
		await app.user.click(button(/^Flex fuel E85/));
		expect(await fact("This pump gives")).toMatch(/^\d+–\d+ % →became \d+–\d+ %$/);
		const event = await saved(app);
		expect(event).toMatchObject({ of: "pump", place: "Mill Road", product: flex });
		expect("value" in event && event.value).toBeCloseTo(0.781, 3);
	});

	test("warns of a layer that takes up gasoline, and refuses what cannot be", async () => {
		const app = await open("tube");
		await type(app, "Fuel, mL", "90");
		await type(app, "Water, mL", "10");
		await type(app, "Lower layer after settling, mL", "53.6");
		await said(/^The lower layer would be 8\d % ethanol: so strong a layer takes up gasoline and reads high\./);
		await type(app, "Lower layer after settling, mL", "5");
		await app.user.click(button("Save it"));
		screen.getByText(/^The lower layer is smaller than the water that went in/);
		await type(app, "Each is read to within, mL", "");
		screen.getByText(/^Type a number here, such as 0\.5/);
		expect(measured(await app.events())).toEqual([]);
	});

	test("takes another uncertainty of the method, and remembers both", async () => {
		const app = await open("tube");
		await type(app, "Lower layer after settling, mL", "62");
		await type(app, "Each is read to within, mL", "0.25");
		await type(app, "Give or take of the method, points", "3");
		await said(/give or take 3 points/);
		await saved(app);
		await waitFor(() => expect(app.model.state().settings.instruments).toEqual({ cylinder: "0.25", method: "3" }));
	});
});

describe("fuel trims", () => {
	test("of two banks are combined, and held against the flashed calibration", async () => {
		const app = await open("trim");
		await app.user.click(await screen.findByRole("radio", { name: /^Two banks/ }));
		expect(await value("Calibrated for, % ethanol")).toBe("30");
		await type(app, "Short term, bank 1, %", "-1.5");
		await type(app, "Long term, bank 1, %", "+2");
		await type(app, "Short term, bank 2, %", "−0,5");
		await type(app, "Long term, bank 2, %", "3 %");
		const mean = (0.985 * 1.02 + 0.995 * 1.03) / 2 - 1;
		await said(
			/^Together \+1\.5 %, the mean of both banks\. On its own that would be 34 % ethanol, give or take 8 points\.$/,
		);
		screen.getByText(/off by 3 % .+ looks like 8 points of ethanol: this is a check of plausibility/);
		const event = await saved(app);
		expect(event).toMatchObject({ of: "trim", sd: 0.03, calibratedFor: 0.3, method: "scan tool" });
		expect("value" in event && event.value).toBeCloseTo(mean, 12);
	});

	test("that differ between the banks, or are at their limit, are pointed out", async () => {
		const app = await open("trim");
		await app.user.click(await screen.findByRole("radio", { name: /^Two banks/ }));
		for (const [field, typed] of [
			["Short term, bank 1, %", "0"],
			["Long term, bank 1, %", "0"],
			["Short term, bank 2, %", "0"],
			["Long term, bank 2, %", "6"],
		])
			await type(app, field, typed);
		await said(/^The banks differ by 6 %: .+ a leak or a sensor \(common practice\)/);
		await type(app, "Long term, bank 2, %", "4");
		await waitFor(() => expect(screen.queryByText(/^The banks differ/)).toBeNull());
		await type(app, "Long term, bank 2, %", "25");
		screen.getByText(/^A long-term trim this large is where most engine computers stop correcting/);
	});

	test("are typed as raw bytes, and teach what this car trims on its own fuel", async () => {
		const app = await open("trim");
		await app.user.click(await screen.findByRole("radio", { name: /^Raw byte/ }));
		await type(app, "Short term, bank 1, raw byte", "0x80");
		await type(app, "Long term, bank 1, raw byte", "84h");
		await said(/^Understood: hexadecimal 84, 132 of 255, which is \+3\.1 %\.$/);
		await said(/^Together \+3\.1 %\. On its own/);
		const learned = async () => (await screen.findByText("This car trims on its own fuel")).parentElement?.textContent;
		await waitFor(async () => expect(await learned()).toMatch(/not known/));
		const event = await saved(app);
		expect(event).toMatchObject({ sd: 0.03, value: 4 / 128 });
		expect("baselineSd" in event && event.baselineSd).toBeCloseTo(0.025, 12);
		location.hash = "#/measure/trim";
		await type(app, "Short term, bank 1, %", "0");
		await type(app, "Long term, bank 1, %", "3");
		await waitFor(async () => expect(await learned()).toMatch(/[+−]\d(\.\d)?\s%, give or take [12](\.\d)?\s%/));
		expect(await learned()).not.toMatch(/not known/);
	});

	test("that are half-typed follow the calibration flashed meanwhile, unless the driver typed another", async () => {
		const cars = aCar({ calibrations: [aCalibration(), aCalibration({ id: "e50", calibratedFor: 0.5 })] });
		let app = await renderApp({ at: "#/measure/trim", logs: [{ car: cars, events: life }] });
		await type(app, "Short term, bank 1, %", "1");
		const flashed = (id: string, calibration: string) =>
			app.model.append([aFlash({ id, calibration, at: isoWithOffset(app.clock.now) })]);
		app.clock.now += 1_800_000;
		await flashed("flash 1", "e50");
		app = await app.restart();
		expect(await value("Calibrated for, % ethanol")).toBe("50");
		expect(await value("Short term, bank 1, %")).toBe("1");
		// Flashed long after the trims were read: they are of the one before.
		app.clock.now += 24 * 3_600_000;
		await flashed("flash 2", "e30");
		app = await app.restart();
		expect(await value("Short term, bank 1, %")).toBe("1");
		screen.getByText(/^When: /, { selector: "summary" });
		expect(await value("Calibrated for, % ethanol")).toBe("30");
		await type(app, "Calibrated for, % ethanol", "85");
		await flashed("flash 3", "e50");
		app = await app.restart();
		expect(await value("Calibrated for, % ethanol")).toBe("85");
	});

	test("say how far to drive in what the car counts in", async () => {
		const app = await open("trim");
		await screen.findByText(/some 3 to 10\skm, until the long-term trim stands still/);
		await app.model.saveSettings({ units: { car: "gal" } });
		await screen.findByText(/some 2 to 6\smi, until the long-term trim stands still/);
		location.hash = "#/measure/reported";
		await screen.findByText(/some 2 to 6\smi first/);
	});

	test("that are missing or no trims say so beside their fields", async () => {
		const app = await open("trim");
		await type(app, "Short term, bank 1, %", "7C");
		await type(app, "Long term, bank 1, %", "130");
		await app.user.click(button("Save it"));
		screen.getByText(/^A percentage has digits.+A raw byte\? Then choose “Raw byte” above\.$/);
		await said(/^It must lie between −100 % and \+99\.2 %: check the number/);
		expect(measured(await app.events())).toEqual([]);
	});
});
