/** npm run screenshots: takes README's and the manifest's pictures of the app as it is, with the invented car. */
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildApp } from "./build";
import { openPhone } from "./harness";
import { openSite } from "./site";

export async function main(): Promise<number> {
	const scratch = mkdtempSync(join(tmpdir(), "heeltap-pictures-"));
	const folder = join(process.cwd(), "public/screenshots");
	mkdirSync(folder, { recursive: true });
	buildApp(join(scratch, "dist"));
	const site = await openSite(join(scratch, "dist"));
	const phone = await openPhone(join(scratch, "profile"));
	const { page } = phone;
	const take = (name: string) => page.screenshot({ path: join(folder, `${name}.png`) });
	try {
		await page.emulateMedia({ colorScheme: "light" });
		await page.goto(`${site.origin}/`);
		await page.getByRole("button", { name: /^Look around/ }).click();
		await page.getByRole("heading", { name: /^Boost/ }).waitFor();
		// The note that the app is stored now has its time, and no place in the picture.
		await page.getByText(/works without a network/).waitFor();
		await page.getByRole("button", { name: /^Dismiss/ }).click();
		await take("tank");
		await page.goto(`${site.origin}/#/plan`);
		await page.getByRole("button", { name: "Note the gauge" }).click();
		for (let step = 0; step < 3; step++) await page.getByRole("button", { name: /a step less$/ }).click();
		await page.getByRole("button", { name: "Pump this", exact: true }).waitFor();
		await page.evaluate(() => window.scrollTo(0, 0));
		await take("plan");
		await page.goto(`${site.origin}/#/fill`);
		await page.getByRole("button", { name: /^Flex fuel E85/ }).click();
		for (const key of ["2", "decimal", "6"]) await page.getByRole("button", { name: key, exact: true }).click();
		await page.getByRole("button", { name: "A second product at this stop" }).click();
		for (const key of ["5", "decimal", "8"]) await page.getByRole("button", { name: key, exact: true }).click();
		await page.getByText(/^After 2.6/).waitFor();
		await page.getByText(/^Inside the window/).waitFor();
		await page.locator(".amount").evaluate((amount) => amount.scrollIntoView());
		await take("fill");
	} finally {
		await phone.close();
		await site.stop();
		rmSync(scratch, { recursive: true, force: true });
	}
	return 0;
}
