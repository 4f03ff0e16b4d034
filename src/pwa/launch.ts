interface LaunchQueue {
	setConsumer(
		consumer: (launch: { targetURL?: string; files?: readonly Pick<FileSystemFileHandle, "getFile">[] }) => void,
	): void;
}

/** A file that the app was opened with, until a screen takes it. */
let launched: Pick<FileSystemFileHandle, "getFile"> | null = null;

/** Gives it once. */
export function takeLaunched(): Pick<FileSystemFileHandle, "getFile"> | null {
	const file = launched;
	launched = null;
	return file;
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
	window.launchQueue?.setConsumer(({ targetURL, files }) => {
		launched = files?.[0] ?? launched;
		// Another address each time, or a second file would not be noticed.
		const hash = files?.length ? `#/take/file${Date.now()}` : targetURL ? new URL(targetURL).hash : "";
		if (hash) window.location.hash = hash;
	});
}
