/** A file that the app was opened with. */
export type Launched = Pick<FileSystemFileHandle, "name" | "getFile">;

interface LaunchQueue {
	setConsumer(consumer: (launch: { targetURL?: string; files?: readonly Launched[] }) => void): void;
}

/** Until a screen takes them. */
let launched: readonly Launched[] = [];

/** Gives them once. */
export function takeLaunched(): readonly Launched[] {
	const files = launched;
	launched = [];
	return files;
}

/**
 * Follows shortcuts, links and files that arrive while the app is open. The manifest asks for the open window to be focused
 * and not navigated, because navigating would throw away what is being typed.
 */
export function followLaunches(window: Window & { launchQueue?: LaunchQueue }): void {
	// A warning outside the app was tapped: see src/sw/sw.ts.
	window.navigator.serviceWorker?.addEventListener("message", ({ data }) => {
		if (data?.type === "GO") window.location.hash = data.hash;
	});
	window.launchQueue?.setConsumer(({ targetURL, files = [] }) => {
		if (files.length > 0) launched = files;
		// Many at once are reports. Another address each time, or a second file would not be noticed.
		const file = files.length > 0 && `#/${files.length > 1 ? "reports" : "take"}/file${Date.now()}`;
		const hash = file || (targetURL ? new URL(targetURL).hash : "");
		if (hash) window.location.hash = hash;
	});
}
