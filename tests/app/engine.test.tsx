import { fireEvent, screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import { aCalibration, aCar, aFlash, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T15:30:00Z");
const sure = aStart({ contents: { value: 0.3, sd: 0.01 } });
const property = (name: string | RegExp) => within(screen.getByRole("listitem", { name }));

async function open(car = aCar(), events = [sure]): Promise<RenderedApp> {
	const app = await renderApp({ at: "#/engine", now, logs: [{ car, events }] });
	await screen.findByRole("heading", { name: "Limits of the fuel system" });
	return app;
}

/** A value of a property, by the term before it. */
function value(name: string | RegExp, term: RegExp): string {
	const dt = property(name).getByText(term);
	return dt.nextElementSibling?.textContent?.trim() ?? "";
}

function slideTo(percent: number): void {
	fireEvent.input(screen.getByRole("slider", { name: /Compare with/ }), { target: { value: String(percent) } });
}

test("the Car screen leads to the engine", async () => {
	await renderApp({ at: "#/car", now, logs: [{ car: aCar(), events: [sure] }] });
	const link = await screen.findByRole("link", { name: "What the blend does, and the fuel system" });
	expect(link.getAttribute("href")).toBe("#/engine");
});

test("every property is told of the tank with its range, of the calibration, and of a chosen content", async () => {
	await open();
	screen.getByText(/The tank holds about 30.% ethanol, nine times in ten 28–32.%\./);
	screen.getByText(/“Stage 2, E30” is made for 30.%\./);
	expect(value(/^Stoichiometric air–fuel ratio, kg of air/, /Tank now/)).toMatch(/^12\.9 \(12\.\d–1[23]\.\d\)$/);
	expect(value(/^Stoichiometric/, /Made for 30.%/)).toBe("12.9");
	// 10.877 and 7.101 kg of air a litre; 0.745 and 0.789 kg/L.
	expect(value(/^Stoichiometric/, /At 85.%/)).toBe("9.8");
	expect(value("Lambda in open loop", /At 85.%/)).toBe("1.271");
	expect(value(/^Injector time/, /At 85.%/)).toMatch(/^\+29\.1.%$/);
	expect(value(/^Fuel volume/, /At 85.%/)).toMatch(/^\+27\.1.%$/);
	expect(value("Fuel trim used up", /At 85.%/)).toMatch(/^\+27\.1.%$/);
	expect(value(/^Injector time/, /Made for 30.%/)).toMatch(/^0\.0.%$/);
	expect(value(/^Fuel trim/, /Tank now/)).toMatch(/^[+−]?0\.\d.% \(−\d\.\d to \+\d\.\d.%\)$/);

	slideTo(10);
	expect(value("Lambda in open loop", /At 10.%/)).toBe("0.928");
	expect(value(/^Injector time/, /At 10.%/)).toMatch(/^−7\.7.%$/);
	expect(screen.getByRole("slider").getAttribute("aria-valuetext")).toMatch(/^10.%$/);
});

test("heat, knock and the liquid stand by for a tap, each with its unit", async () => {
	const { user } = await open();
	expect(screen.queryByRole("listitem", { name: "Octane, RON" })).toBeNull();
	for (const group of ["Heat and cooling", "Resistance to knock", "The liquid itself"])
		await user.click(screen.getByRole("heading", { name: group }));
	await screen.findByRole("listitem", { name: "Density, kg/L" });
	slideTo(0);
	expect(value("Heating value, MJ/L", /At 0.%/)).toBe("32.4");
	expect(value("Heat of vaporisation, kJ per kg of stoichiometric mixture", /At 0.%/)).toBe("22.4");
	expect(value("Octane, RON", /At 0.%/)).toBe("95.0");
	expect(value("Octane, MON", /At 0.%/)).toBe("85.0");
	expect(value("Density, kg/L", /At 0.%/)).toBe("0.745");
	expect(value(/^Vapour pressure at 37\.8.°C, kPa$/, /At 0.%/)).toBe("60");
});

test("each property says what it means, and where it comes from behind a tap", async () => {
	const { user } = await open();
	const trim = property("Fuel trim used up");
	trim.getByText(/So much the engine adds by itself in closed loop/);
	const source = trim.getByText(/CRC E-87-1/).closest("details");
	expect(source?.open).toBe(false);
	await user.click(trim.getByText("Where it comes from"));
	expect(source?.open).toBe(true);
});

test("the tank’s range is drawn as a band over the curve", async () => {
	await open();
	const curve = property("Lambda in open loop").getByRole("img", {
		name: /from 0\.896 without any to 1\.372 of pure ethanol\. The tank’s range, 28.% to 32.%, is drawn as a band/,
	});
	const band = curve.querySelector(".band");
	expect(Number(band?.getAttribute("x"))).toBeCloseTo(28.4, 0);
	expect(Number(band?.getAttribute("width"))).toBeCloseTo(3.3, 0);
});

test("lambda is that of the card, once the card says what is commanded", async () => {
	await open(aCar({ fuelSystem: { commandedLambda: 0.8, trimAuthority: 0.25 } }));
	expect(value("Lambda in open loop", /Made for 30.%/)).toBe("0.800");
	property("Lambda in open loop").getByText(/At full load it commands 0\.8, the fuel-system card says/);
	property("Fuel trim used up").getByText(/The fuel-system card gives them 25.%/);
});

test("without a calibration nothing is held against one, and without entries there is no tank", async () => {
	await renderApp({ at: "#/engine", now, logs: [{ car: aCar({ calibrations: [] }), events: [] }] });
	await screen.findByText("Nothing is known of this tank yet.");
	screen.getByText(/No calibration is entered/);
	expect(screen.queryByRole("listitem", { name: "Lambda in open loop" })).toBeNull();
	expect(property(/^Stoichiometric/).queryByText(/Tank now|Made for/)).toBeNull();
	expect(
		property(/^Stoichiometric/)
			.getByRole("img")
			.querySelector(".band"),
	).toBeNull();
});

test("the calibration that is flashed counts, not the first of the list", async () => {
	const gasoline = aCalibration({ id: "e10", name: "Pump gasoline", calibratedFor: 0.1, window: [0, 0.15] });
	await open(aCar({ calibrations: [gasoline, aCalibration()] }), [sure, aFlash()] as never);
	await waitFor(() => screen.getByText(/“Stage 2, E30” is made for 30.%/));
});
