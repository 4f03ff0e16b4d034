import { screen, waitFor } from "@testing-library/preact";
import { expect } from "vitest";
import type { RenderedApp } from "./renderApp";

/** After a tap on "Save": says yes where the app asks about the lean limit first, and waits for the tank's page. */
export async function answerQuestion({ user }: RenderedApp): Promise<void> {
	const asked = () => screen.queryByRole("button", { name: "Save it, it is in the tank" });
	await waitFor(() => asked() ?? expect(location.hash).toBe("#/tank"));
	const sure = asked();
	if (sure) await user.click(sure);
	await waitFor(() => expect(location.hash).toBe("#/tank"));
}
