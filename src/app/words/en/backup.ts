/** Backups: when, how much, and what stands in the way of one. */
export const words = {
	title: "Backup",
	/** In the browser’s own dialog. */
	fileType: "Heeltap log",
	about: "The app keeps the log on this phone alone. A file of it, kept elsewhere, outlives the phone.",
	unreadable: (count: number) =>
		`A newer version of the app wrote ${entries(count)} that this one can’t read. They are kept, but a backup made now would lack them: update the app first.`,
	opening:
		"Opening adds what is missing here and takes nothing away. Two phones join their logs of one car the same way.",
	here: (count: number, car: string) => `On this phone: ${entries(count)} for “${car}”.`,
	save: "Save a backup",
	send: "Send a backup",
	notSent: (file: string) => `The phone would not send it, so it is saved instead, as ${file}.`,
	savedAs: (file: string) => `Saved as ${file}. Keep it away from this phone.`,
	/** When the last one was made, with how many entries, and what it lacks. */
	never: (count: number) => `No backup has left this phone: ${entries(count)} ${count === 1 ? "is" : "are"} here only.`,
	made: {
		saved: (when: string, count: number) => `Last backup: saved ${when}, with ${entries(count)}.`,
		sent: (when: string, count: number) => `Last backup: sent ${when}, with ${entries(count)}.`,
		written: (when: string, count: number) => `Last backup: written ${when}, with ${entries(count)}.`,
		opened: (when: string, count: number) =>
			`Last backup: a file that was opened here ${when}, with ${entries(count)}.`,
	},
	fuller: (here: number) => `That is more than the ${here} here: open it to bring the others back.`,
	nothingSince: "Nothing was added since.",
	since: (count: number) => `${entries(count)} since then ${count === 1 ? "is" : "are"} here only.`,
	inNone: (count: number) => `${entries(count)} of the log ${count === 1 ? "is" : "are"} in no backup.`,
	inNoneSince: (count: number, when: string) =>
		`${entries(count)} since the backup of ${when} ${count === 1 ? "is" : "are"} in none.`,
	risks: {
		weekly:
			"Safari’s engine deletes the log after seven days of use without a visit, unless the app is on the home screen.",
		kept: "What is in no backup is lost with the phone.",
		unkept: "What is in no backup is lost with the phone, and the browser may clear it when space runs short.",
	},
	/** Where the log writes itself and does not. */
	troubles: {
		ask: "The browser will ask you once more before the app may write to it.",
		refused: "The browser does not let the app write to it any more: allow it again, or choose another file.",
		gone: "It is no longer where it was: choose another file.",
		fuller: "It has entries that this phone lacks, so it is left alone: open it as a backup, and it is written again.",
		other: "It holds the log of another car, so it is left alone: choose another file.",
		failed:
			"It could not be written. What was in it is still whole, and the app tries again with the next save and the next start.",
	},
	automatic: "A backup after every save",
	writtenTo: (file: string) => `The log is written to “${file}”.`,
	notYet: "Not written yet.",
	lastWritten: (when: string) => `Last written ${when}.`,
	chooseOnce:
		"Choose a file once, and the app writes the log to it after every save. Best in a folder that is copied to another device.",
	choose: "Choose a file…",
	chooseAnother: "Choose another file…",
	noFile: "The browser would not give that file: choose another place.",
	newName: "Give it a new name: a file of the same name would be emptied first.",
	stop: "Stop writing it",
	stopped: "The file stays as it is. It is written no more.",
	allow: "Let the app write to it",
	reminder: "Back up the log",
	notNow: "Not now",
	shouldBeIn: (file: string) => `The log should be in “${file}”.`,
	seeToIt: "See to it",
};

export type Words = typeof words;

function entries(count: number): string {
	return `${count} ${count === 1 ? "entry" : "entries"}`;
}
