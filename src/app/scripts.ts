/**
 * The three scripts that the app starts by their addresses. Where the browser guards such addresses (Trusted Types), this
 * policy is the only one that the app's Content-Security-Policy allows, and it vouches for nothing else.
 */
import dataLog from "../datalog/worker.ts?worker&url";
import keeper from "../keeper/worker.ts?worker&url";

const addresses = { dataLog, keeper, serviceWorker: new URL("sw.js", document.baseURI).href };

export type Script = keyof typeof addresses;

/** What browsers have of Trusted Types that is of use here. */
interface Guarded {
	readonly trustedTypes?: {
		createPolicy(
			name: string,
			rules: { createScriptURL(script: Script): string },
		): { createScriptURL(script: Script): unknown };
	};
}

/** Its name is the one in src/tools/policy.ts. */
const policy = (window as Guarded).trustedTypes?.createPolicy("heeltap", {
	createScriptURL: (script) => addresses[script],
});

/** The script's address; where the browser asks for a trusted one, such a one, which TypeScript's libraries do not know. */
export function addressOf(script: Script): string {
	return (policy?.createScriptURL(script) ?? addresses[script]) as string;
}
