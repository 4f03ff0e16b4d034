// Before the first picture: the theme as last seen (src/app/lastSeen.ts), or a dark page would begin with a white one.
try {
	const { settings } = JSON.parse(localStorage.getItem("heeltap-seen"));
	document.documentElement.dataset.theme = settings.theme;
} catch {
	// Nothing seen: the phone's own.
}
