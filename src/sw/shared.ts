/** What other apps share with this one: put by until the page takes it, so that it need not be running. */
import { registerRoute } from "workbox-routing";

declare const self: ServiceWorkerGlobalScope;

/** The page looks here: src/app/shared.ts. */
const cacheName = "heeltap-shared";
/** More than any log or picture that is handed over; the page is stricter. */
const largest = 40_000_000;

export function takeShared(): void {
	const { scope } = self.registration;
	const path = new URL("share", scope).pathname;
	registerRoute(
		({ url, sameOrigin }) => sameOrigin && url.pathname === path,
		async ({ request }) => {
			const found = await sharedIn(request).catch(() => null);
			if (found) await putBy(found);
			// A number of its own, or a second share would not be noticed by a page that is open already.
			return Response.redirect(`${scope}#/take/file${Date.now()}`, 303);
		},
		"POST",
	);
}

/** The first file, or else what was written. */
async function sharedIn(request: Request): Promise<Blob | null> {
	const form = await request.formData();
	const file = form.get("file");
	if (file instanceof File && file.size > 0) return file.size <= largest ? file : null;
	const texts = ["url", "text", "title"].map((name) => form.get(name)).filter((value) => typeof value === "string");
	return texts.some((text) => text !== "") ? new Blob([texts.join("\n")], { type: "text/plain" }) : null;
}

async function putBy(found: Blob): Promise<void> {
	const cache = await caches.open(cacheName);
	await cache.put(`${self.registration.scope}shared`, new Response(found));
}
