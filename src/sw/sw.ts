import {
	cleanupOutdatedCaches,
	createHandlerBoundToURL,
	type PrecacheEntry,
	precacheAndRoute,
} from "workbox-precaching";
import { registerRoute } from "workbox-routing";
import { takeShared } from "./shared";

declare const self: ServiceWorkerGlobalScope & { readonly __WB_MANIFEST: (PrecacheEntry | string)[] };

precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();

// The app is one page, addressed by its fragment. Other paths are the server's, which answers 404 where it should.
const scope = new URL(self.registration.scope).pathname;
const shell = [scope, `${scope}index.html`];
registerRoute(
	({ request, url, sameOrigin }) => sameOrigin && request.mode === "navigate" && shell.includes(url.pathname),
	createHandlerBoundToURL("index.html"),
);

takeShared();

// A new version waits until the driver accepts it: see src/pwa/update.ts.
self.addEventListener("message", (event) => {
	if (event.data?.type === "SKIP_WAITING") self.skipWaiting();
});

// Only the very first version takes over the open page, which then works offline without a reload.
let first = false;
self.addEventListener("install", () => {
	first = !self.registration.active;
});
self.addEventListener("activate", (event) => {
	if (first) event.waitUntil(self.clients.claim());
});

// A tap on a warning leads to its car.
self.addEventListener("notificationclick", (event) => {
	const hash = `#/cars/${encodeURIComponent(event.notification.data)}`;
	event.notification.close();
	event.waitUntil(
		self.clients.matchAll({ type: "window" }).then(([open]) => {
			if (!open) return self.clients.openWindow(`${self.registration.scope}${hash}`);
			// An open page goes there by itself: sent there, it would be loaded anew.
			open.postMessage({ type: "GO", hash });
			return open.focus();
		}),
	);
});
