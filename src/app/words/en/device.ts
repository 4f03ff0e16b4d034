/** How the app behaves on this device. */
export const words = {
	warnings: "Warnings",
	notify: "Notify me",
	notifyMore: "Of a new warning, when the log changes while you look elsewhere.",
	noNotifications: "This browser has no notifications. The warnings stand on the Tank screen all the same.",
	denied:
		"The browser refuses notifications from this app. Allow them in the browser’s settings for this site, then come back. The warnings stand on the Tank screen all the same.",
	language: "Language",
	ofBrowser: "The browser’s",
	takesEffect: "The app starts anew in it. What is half typed stays.",
	unsaved: "There is something typed above that is not saved yet. Save it first, or begin anew without it.",
	unsavedSomewhere:
		"There is something typed or opened that is not saved yet. Save it first, or begin anew without it.",
	beginAnew: "Begin anew",
	notKept: "This browser keeps no choice of language: it follows the browser’s own.",
};

export type Words = typeof words;
