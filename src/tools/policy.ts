import type { Plugin } from "vite";

/** Nothing from elsewhere, no inline code or style, no plug-ins, no forms sent anywhere. */
const policy = [
	"default-src 'self'",
	"object-src 'none'",
	"base-uri 'none'",
	"form-action 'none'",
	"frame-src 'none'",
	"media-src 'none'",
];

/** What a server that can set headers should send; a meta tag can carry neither frame-ancestors nor the others. */
export const headers = {
	"Content-Security-Policy": [...policy, "frame-ancestors 'none'"].join("; "),
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
