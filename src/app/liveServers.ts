/** Where this build of the app may replicate to. */
declare const __HEELTAP_LIVE__: readonly string[];

/** By the policy that the page was built with: the app's own host, and those that were named to the build. */
export function isReachable(server: string, app: Pick<Location, "protocol" | "host">): boolean {
	const { protocol, host } = new URL(server);
	const own = protocol === app.protocol.replace(/^http/, "ws") || protocol === "wss:";
	return (own && host === app.host) || __HEELTAP_LIVE__.includes(`${protocol}//${host}`);
}
