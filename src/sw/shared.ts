/** What other apps share with this one: put by until the page takes it, so that it need not be running. */
import { registerRoute } from "workbox-routing";
import { received } from "./putBy";

declare const self: ServiceWorkerGlobalScope;

export function takeShared(): void {
	const { scope } = self.registration;
	const path = new URL("share", scope).pathname;
	registerRoute(
		({ url, sameOrigin }) => sameOrigin && url.pathname === path,
		async ({ request }) =>
			Response.redirect(`${scope}${await received(request, { caches, scope, now: Date.now() })}`, 303),
		"POST",
	);
}
