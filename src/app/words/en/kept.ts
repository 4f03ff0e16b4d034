/** What this browser may do to the data. */
export const words = {
	title: "What the browser may do",
	weekly:
		"This looks like Safari’s engine. It deletes what a page has stored after seven days of use without a visit to the page. An app on the home screen is spared that, but begins with an empty log: save a backup here, add the app to the home screen, and open the backup there.",
	promised:
		"The browser has promised not to clear this data by itself. It stays until you delete the app’s data in the browser’s settings.",
	silent: "This browser does not say whether it keeps the data for good. Save a backup now and then.",
	unpromised: "The browser has not promised to keep this data: it may clear all of it when space runs short.",
	installing: "An app on the home screen is more likely to be promised it.",
	ask: "Ask the browser to keep it",
	private:
		"In a private window all data goes with the window; an app can’t tell whether it is in one. Deleting the browser’s history may delete the data, too.",
};

export type Words = typeof words;
