/**
 * What runs in the page, to save stops as fast as the app takes them. The app does all of it by itself: its fields get
 * their input events and its buttons their clicks. Only the way from a finger to the page is left out, which is not what
 * is tried here.
 */

/** Types a stop, amounts in litres. */
export async function typeStop(amounts: readonly string[]): Promise<void> {
	const until = async <Seen>(what: string, look: () => Seen | null | undefined | false): Promise<Seen> => {
		for (const deadline = performance.now() + 60_000; ; ) {
			const seen = look();
			if (seen) return seen;
			if (performance.now() > deadline) throw new Error(`no ${what}: ${document.body.textContent}`);
			await new Promise((done) => setTimeout(done, 2));
		}
	};
	const button = (start: string) => () =>
		[...document.querySelectorAll<HTMLButtonElement>("main button")].find(({ textContent }) =>
			textContent?.startsWith(start),
		);
	location.hash = "#/fill";
	for (const [i, amount] of amounts.entries()) {
		if (i > 0) (await until("second product", button("A second product at this stop"))).click();
		const field = await until(`field ${i + 1}`, () => {
			const input = document.querySelector<HTMLInputElement>("#amount");
			return input?.labels?.[0]?.textContent === (i > 0 ? `Amount ${i + 1}, L` : "Amount, L") && input;
		});
		(await until("gasoline", button("Gasoline E10"))).click();
		await until("gasoline chosen", () => button("Gasoline E10")()?.ariaPressed === "true");
		field.value = amount;
		field.dispatchEvent(new InputEvent("input", { bubbles: true }));
		const sum = amounts.slice(0, i + 1).map((litres) => `${litres}\u00a0L`);
		await until(`sum ${sum}`, button(`Save ${sum.join(" + ")}`));
	}
}

/** The amounts of the form as it is stored. */
export function formOnDisk(): Promise<string> {
	return new Promise((done, fail) => {
		const opening = indexedDB.open("heeltap");
		opening.onerror = () => fail(opening.error);
		opening.onsuccess = () => {
			const asking = opening.result.transaction("drafts").objectStore("drafts").get("car/fill");
			asking.onerror = () => fail(asking.error);
			asking.onsuccess = () => {
				opening.result.close();
				done((asking.result?.pours ?? []).map(({ typed }: { typed: string }) => typed).join());
			};
		};
	});
}

/** Saves the form that is open. Resolves once the screen says that it is saved. */
export async function saveStop(): Promise<void> {
	const buttons = [...document.querySelectorAll<HTMLButtonElement>("main button")];
	buttons.find(({ textContent }) => textContent?.startsWith("Save "))?.click();
	for (const deadline = performance.now() + 60_000; ; ) {
		const toasts = document.querySelector(".toasts")?.textContent ?? "";
		if (location.hash === "#/tank" && toasts.includes("Saved.")) return;
		if (performance.now() > deadline) throw new Error(`not saved: ${document.body.textContent}`);
		await new Promise((done) => setTimeout(done, 1));
	}
}

/** A fill as it is stored. */
export interface StoredFill {
	readonly litres: number;
}

/** All fills on the disk. */
export function storedFills(): Promise<StoredFill[]> {
	return new Promise((done, fail) => {
		const opening = indexedDB.open("heeltap");
		opening.onerror = () => fail(opening.error);
		opening.onsuccess = () => {
			const asking = opening.result.transaction("events").objectStore("events").getAll();
			asking.onerror = () => fail(asking.error);
			asking.onsuccess = () => {
				opening.result.close();
				done(asking.result.filter(({ kind }) => kind === "fill").map(({ litres }) => ({ litres })));
			};
		};
	});
}
