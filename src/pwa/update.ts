import type { Workbox } from "workbox-window";

export interface UpdateCallbacks {
	/** The app has been stored for the first time: from now on it starts without a network. */
	onReady(): void;
	/** A newer version is stored and waits. It takes over when `apply` is called, by a reload, and never by itself. */
	onWaiting(apply: () => void): void;
}

/** What this module needs of the browser; tests bring their own. */
export interface Surroundings {
	supported: boolean;
	openWorkbox(): Promise<Pick<Workbox, "addEventListener" | "register" | "update" | "messageSkipWaiting">>;
	controlled(): boolean;
	online(): boolean;
	/** Something is typed that a reload would lose. */
	unsaved(): boolean;
	reload(): void;
}

const hourMs = 3_600_000;
/** Installed iOS apps may never hear that the new version has taken over (WebKit bug 199110). */
const takeOverMs = 2_000;

/** What a reload would lose. */
interface Typed {
	/** In forms that no draft keeps. */
	isAnythingUnsaved(): boolean;
	/** Resolves once what is being written is on the disk. */
	written(): Promise<void>;
}

/** The browser itself; `script` is the address of the service worker. */
export function browser(script: string, { isAnythingUnsaved, written }: Typed): Surroundings {
	return {
		supported: import.meta.env.PROD && "serviceWorker" in navigator,
		async openWorkbox() {
			const { Workbox } = await import("workbox-window");
			return new Workbox(script, { updateViaCache: "none" });
		},
		controlled: () => navigator.serviceWorker.controller !== null,
		online: () => navigator.onLine,
		unsaved: isAnythingUnsaved,
		reload: () => void written().then(() => location.reload()),
	};
}

/** Registers the service worker after the first paint and looks for new versions. Rejects where the browser refuses. */
export async function watchForUpdates(callbacks: UpdateCallbacks, env: Surroundings): Promise<void> {
	reloadWhenChunksAreGone(env);
	if (!env.supported) return;
	await firstPaint();

	const workbox = await env.openWorkbox();
	let controlled = env.controlled();
	let offered = false;
	let accepted = false;
	let replaced = false;
	let reloading = false;

	const reload = () => {
		if (!reloading) env.reload();
		reloading = true;
	};
	const apply = () => {
		if (replaced) return reload();
		accepted = true;
		workbox.messageSkipWaiting();
		setTimeout(reload, takeOverMs);
	};
	const offer = () => {
		if (!offered) callbacks.onWaiting(apply);
		offered = true;
	};

	workbox.addEventListener("activated", (event) => {
		if (!event.isUpdate && !event.isExternal) callbacks.onReady();
	});
	workbox.addEventListener("waiting", offer);
	workbox.addEventListener("controlling", () => {
		// The first worker of all takes the page over silently; later ones only because a driver said yes, maybe in another tab.
		if (accepted) reload();
		else if (controlled) {
			replaced = true;
			offer();
		}
		controlled = true;
	});

	const registration = await workbox.register({ immediate: true });
	// The visit itself makes the browser look; what it found before workbox-window was loaded goes unheard there.
	const early = controlled ? registration?.installing : null;
	early?.addEventListener("statechange", () => {
		if (early.state === "installed") offer();
	});

	// A look that fails is made up for by the next one.
	const look = () => {
		if (env.online()) workbox.update().catch(() => {});
	};
	look();
	// Installed iOS apps do not look by themselves when they are opened or come back.
	document.addEventListener("visibilitychange", () => {
		if (document.visibilityState === "visible") look();
	});
	window.addEventListener("pageshow", look);
	setInterval(look, hourMs);
}

/** A page older than the files on the server asks for parts that are gone: reload, once for each build. */
function reloadWhenChunksAreGone(env: Surroundings): void {
	const key = "heeltap-reloaded";
	window.addEventListener("vite:preloadError", () => {
		// Built code is named after its content, so its address tells builds apart.
		// Nobody was asked: what is typed stays, and the screen that is missing says what to do.
		if (env.unsaved()) return;
		if (!env.online() || sessionStorage.getItem(key) === import.meta.url) return;
		sessionStorage.setItem(key, import.meta.url);
		env.reload();
	});
}

function firstPaint(): Promise<void> {
	return new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
}
