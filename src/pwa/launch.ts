interface LaunchQueue {
	setConsumer(consumer: (launch: { targetURL?: string }) => void): void;
}

/**
 * Follows shortcuts and links that arrive while the app is open. The manifest asks for the open window to be focused
 * and not navigated, because navigating would throw away what is being typed.
 */
export function followLaunches(window: Window & { launchQueue?: LaunchQueue }): void {
	window.launchQueue?.setConsumer(({ targetURL }) => {
		const hash = targetURL ? new URL(targetURL).hash : "";
		if (hash) window.location.hash = hash;
	});
}
