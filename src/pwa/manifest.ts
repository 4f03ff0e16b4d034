import type { ManifestOptions } from "vite-plugin-pwa";

const petrol = "#0b2730";

/** Read at build time only. Every address is relative, so that the app may live in any folder of any host. */
export const manifest: Partial<ManifestOptions> = {
	// Resolved against the host, not the folder: names the app among others of the same host, and must never change.
	id: "heeltap",
	name: "Heeltap",
	short_name: "Heeltap",
	description:
		"What is in the tank of a car tuned for a mix of petrol and ethanol, how sure that is, and what to pump to get the mix you want. Works offline; nothing leaves the phone.",
	lang: "en",
	dir: "ltr",
	start_url: "./",
	scope: "./",
	display: "standalone",
	theme_color: petrol,
	background_color: petrol,
	categories: ["utilities"],
	launch_handler: { client_mode: ["focus-existing", "auto"] },
	// A log, a card or codes that another app hands over: the service worker puts them by (src/sw/shared.ts).
	share_target: {
		action: "./share",
		method: "POST",
		enctype: "multipart/form-data",
		params: {
			title: "title",
			text: "text",
			url: "url",
			files: [{ name: "file", accept: ["text/plain", ".txt", "application/json", ".json", "image/*"] }],
		},
	},
	file_handlers: [
		{
			action: "./",
			accept: { "application/json": [".json"], "text/plain": [".txt"] },
		},
	],
	icons: [
		{ src: "icon-192.png", sizes: "192x192", type: "image/png", purpose: "any" },
		{ src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
		{ src: "icon-maskable-192.png", sizes: "192x192", type: "image/png", purpose: "maskable" },
		{ src: "icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
	],
	shortcuts: [
		{ name: "Record a fill", short_name: "Fill", url: "./#/fill", icons: [{ src: "icon-192.png", sizes: "192x192" }] },
		{
			name: "What is in the tank",
			short_name: "Tank",
			url: "./#/tank",
			icons: [{ src: "icon-192.png", sizes: "192x192" }],
		},
	],
};

/** Pictures for the install dialogue, taken of the app itself; the build lists those that exist in public/. */
export const screenshots = [
	{ src: "screenshots/tank.png", label: "The tank as twenty equally likely contents over the window of the tune" },
	{ src: "screenshots/fill.png", label: "Recording a fill at the pump" },
].map((shot) => ({ ...shot, sizes: "780x1688", type: "image/png", form_factor: "narrow" as const }));
