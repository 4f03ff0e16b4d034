import type { Plugin } from "vite";

/**
 * Servers beside the app's own host to which this build may replicate, from HEELTAP_LIVE: `wss://cars.example`, more of them
 * with spaces between. Each is a door through which code that got in could carry the log out, so none is open by itself.
 */
export function liveServers(named = process.env.HEELTAP_LIVE ?? ""): string[] {
	const servers = named.split(/\s+/).filter((server) => server !== "");
	for (const server of servers)
		if (!/^wss:\/\/[a-z\d-]+(\.[a-z\d-]+)*(:\d{1,5})?$/.test(server))
			throw new Error(`HEELTAP_LIVE must name servers like wss://cars.example, got ${JSON.stringify(server)}`);
	return servers;
}

/**
 * All that the app's own host may serve to it, and nothing else (W3C CSP Level 3; OWASP Content Security Policy Cheat
 * Sheet). Everything is forbidden first: fonts, frames, media, plug-ins, and what later browsers may add.
 */
const policy = [
	"default-src 'none'",
	"script-src 'self'",
	"style-src 'self'",
	"img-src 'self'",
	"manifest-src 'self'",
	// The workers, the service worker among them.
	"worker-src 'self'",
	// The service worker fetches the app to store it; replication that is passed on by the app's own host is 'self', too.
	["connect-src 'self'", ...liveServers()].join(" "),
	// These three do not follow default-src.
	"base-uri 'none'",
	"form-action 'none'",
	// No text becomes code or markup; addresses of scripts come from src/app/scripts.ts alone (W3C Trusted Types).
	"require-trusted-types-for 'script'",
	"trusted-types heeltap",
];

/** What the app never asks for; a hole in it could not either. */
const unused = ["microphone", "geolocation", "payment", "usb", "serial", "bluetooth", "hid", "midi", "display-capture"];

/** What a server that can set headers should send; a meta tag can carry neither frame-ancestors nor the others. */
export const headers = {
	"Content-Security-Policy": [...policy, "frame-ancestors 'none'"].join("; "),
	// The camera scans codes, on the app's own page only and when the driver says so.
	"Permissions-Policy": [...unused.map((feature) => `${feature}=()`), "camera=(self)"].join(", "),
	// No page of another host gets hold of the app's window, or of its files.
	"Cross-Origin-Opener-Policy": "same-origin",
	"Cross-Origin-Resource-Policy": "same-origin",
	"X-Content-Type-Options": "nosniff",
	"Referrer-Policy": "no-referrer",
};

/** Puts the policy into the built page, so that it holds on any static host. The dev server needs inline code. */
export function policyTag(): Plugin {
	return {
		name: "heeltap-policy",
		apply: "build",
		transformIndexHtml: () => [
			{
				tag: "meta",
				attrs: { "http-equiv": "Content-Security-Policy", content: policy.join("; ") },
				injectTo: "head-prepend",
			},
		],
	};
}
