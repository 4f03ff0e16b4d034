/** Replication through a server of the users' own. */
const entries = (count: number) => (count === 1 ? "1 entry" : `${count} entries`);
const messages = (count: number) => (count === 1 ? "1 message" : `${count} messages`);

export const words = {
	title: "Live",
	reading: "Looking how it stands…",
	off: (car: string) => `“${car}” is not live: its entries stay on this phone until you hand them over.`,
	about:
		"Phones that keep the same car can pass their entries on by themselves, through a server that somebody you know runs. Every entry is sealed on the phone; the server learns when something was sent and about how long it is, and nothing else.",
	need: "You need the server’s invitation for this car, or the code that a phone shows on which the car is live already.",
	toScan: "Scan or open an invitation or a code",
	noCar: "There is no car on this phone yet. With the code of a phone on which a car is live it comes here, too.",
	server: "Server",
	car: "Car",
	goodUntil: "Good until",

	invited: "An invitation to go live",
	invitedMore: (car: string) =>
		`Switched on, this phone makes a key for “${car}”, sends its entries sealed with it, and shows a code for the next phone. An invitation is for one car.`,
	whichCar: "For which car?",
	noCarYet: "There is no car on this phone to go live with: set one up first, then open the invitation again.",
	replaces: (server: string) =>
		`This car is live through ${server} already. Switched on here, it leaves that server, and its other phones need a new code.`,
	switchOn: "Switch on",
	leave: "Leave it",
	paired: (car: string) => `“${car}” of another phone, live`,
	pairedMore:
		"Kept, this phone has the car’s entries as they are made on the other phones, and they have those made here. Whoever has this code can read and add entries of this car.",
	joins: "The car is on this phone already: its entries here and there become one log.",
	keep: "Keep",
	switchedOn: (car: string) => `“${car}” is live.`,
	unkept: "The phone could not keep it. Try again.",
	ended: (when: string) => `This invitation ended on ${when}: ask the one who runs the server for a new one.`,
	codeEnded: "This code was made for one day, which is over: let the other phone show a new one.",
	notAllowed: (server: string) =>
		`This copy of the app may not go to ${server}. Open the code in the copy of the app that the server’s host names, or ask the host to pass the server on under the app’s own address.`,

	state: {
		connecting: "Connecting to the server…",
		taking: "Taking what has come since…",
		sending: (count: number) => `${entries(count)} on the way to the server.`,
		caughtUp: "Caught up: the server has all entries of this phone, and this phone all of the server.",
		offline: (waiting: number) =>
			waiting === 0
				? "The server can’t be reached. Nothing waits to be sent."
				: `The server can’t be reached. ${entries(waiting)} ${waiting === 1 ? "waits" : "wait"} to be sent, and will be.`,
		refused: {
			notAllowed:
				"The server refuses this phone: the invitation was taken back, or is not of this server. Ask the one who runs it.",
			ended: "The server refuses this phone: the invitation has ended. Ask the one who runs it for a new one.",
			full: "The server has no more room for this car. Ask the one who runs it.",
			noStream: "The server is there, but keeps no entries yet. Ask the one who runs it.",
			tooLarge: "An entry is larger than the server takes. Ask the one who runs it.",
			policy: "The app may not go to this server.",
		},
	},
	sinceWhen: "Offline since",
	refusedSince: "Refused since",
	heard: "Server last heard of",
	news: "Last entries from another phone",
	never: "not yet",
	refusedTitle: "Not taken",
	refusedDamaged: (count: number) =>
		`${messages(count)} could not be opened: damaged, sealed with another key, or of another car. They were left out; all else goes on.`,
	refusedNewer: (count: number) =>
		`${messages(count)} of a newer version of the app. Update the app, and they are taken then.`,
	refusedContradicting: (count: number) =>
		`${messages(count)} would change what is here already under the same name. What is here stays.`,
	refusedAgain: (count: number) => `${messages(count)} had come before. That changes nothing.`,
	held: (count: number) => `${entries(count)} will be joined once what they belong to has come.`,

	nextPhone: "Another phone for this car",
	nextPhoneMore:
		"The other phone scans this, or opens the link or the file. It holds the key: give it only to people who may read and write this car’s log. It is taken for a day.",
	show: "Show the code",
	code: (car: string) => `Pairing code of “${car}”`,
	fileHead: (car: string) =>
		`“${car}” live in Heeltap. Open this file in the app, or the link, within a day. Whoever has it can read the car’s entries.`,
	fileName: (car: string) => `${car}-live`,
	offTitle: "Switch off",
	offMore:
		"The entries stay on this phone, and on the others. This phone forgets the key. To shut out a lost phone, switch off on all of them, ask for a new invitation, switch on and pair anew.",
	offNow: "Switch off on this phone",
	switchedOff: (car: string) => `“${car}” is no longer live on this phone.`,
	back: "Back to the car",
};

export type Words = typeof words;
