/** What a phone shows of the account, to the last digit. */
import type { Page } from "playwright-core";

/** What the Tank and Log screens say, once the log is reckoned. */
export async function shownOn(page: Page, origin: string): Promise<(string | null)[]> {
	await page.goto(`${origin}/#/tank`);
	await page.locator(".figures").waitFor();
	await page.getByText(/Reckoning the log anew/).waitFor({ state: "detached" });
	const seen = [
		await page.locator(".verdict").textContent(),
		await page.locator(".figures").textContent(),
		await page.getByRole("img", { name: /^Twenty/ }).getAttribute("aria-label"),
	];
	await page.goto(`${origin}/#/log`);
	await page.locator('main a[href^="#/entry"]').first().waitFor();
	return [...seen, ...(await page.locator('main a[href^="#/entry"]').allTextContents())];
}

/** After a tap on "Save": says yes where the app asks about the lean limit first, and waits until it is saved. */
export async function answerQuestion(page: Page): Promise<void> {
	const asked = page.getByRole("button", { name: "Save it, it is in the tank" });
	const saved = page.getByText(/^Saved\./);
	await asked.or(saved).first().waitFor();
	if (await asked.isVisible()) await asked.click();
	await saved.waitFor();
}

/** Every figure that the account keeps of the tank of the car "car" now. */
export function figuresOf(page: Page): Promise<unknown> {
	return page.evaluate(
		() =>
			new Promise((done, fail) => {
				const request = indexedDB.open("heeltap");
				request.onerror = () => fail(request.error);
				request.onsuccess = () => {
					const shown = request.result.transaction("checkpoints").objectStore("checkpoints").get("car/shown");
					shown.onsuccess = () => {
						request.result.close();
						const { count, now } = shown.result;
						done({ count, estimate: now.estimate, level: now.level });
					};
				};
			}),
	);
}
