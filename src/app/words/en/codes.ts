/** Codes, links and files: how they are shown, sent and read. */
export const words = {
	send: "Send the link",
	copy: "Copy the link",
	copied: "The link is copied.",
	uncopied: "The phone would not copy it: press long on the link below and copy it from there.",
	linkItself: "The link itself",
	saveFile: "Save it as a file",
	sendFile: "Send it as a file",
	saved: (name: string) => `Saved as ${name}.`,
	unsent: (name: string) => `The phone would not send it, so it is saved instead, as ${name}.`,
	code: (what: string) => `QR code: ${what}`,
	codeOf: (place: number, count: number) => `Code ${place} of ${count}`,
	next: "Next code",
	previous: "Previous code",
	turning: "Turn the codes by themselves",
	turningMore: "The other phone takes them in any order, and says which are still missing.",

	scan: "Scan with the camera",
	stopScanning: "Stop the camera",
	scanning: "Hold the code in the picture, about as far away as it is wide twice over.",
	picture: "Camera picture",
	scanPicture: "Scan from a picture",
	camera: {
		none: "This device has no camera that the app could use: scan from a picture, or open the link or the file.",
		refused:
			"The camera is not allowed to this app: allow it in the browser’s settings of this site, or scan from a picture.",
		busy: "The camera is in use by something else: close that and try again, or scan from a picture.",
		failed: "The camera did not start: try again, or scan from a picture.",
	},
	noPicture: "This file is no picture that the phone can show: choose another one.",
	noCode:
		"No code was found in this picture: take it straight from the front, sharp, with the white rim around the code.",
	decoderMissing: "The part of the app that reads codes could not be loaded. Reload the app once there is a network.",

	foreign: {
		address: (host: string) => `This is a link to ${host}, and holds no calibration card and no entries of Heeltap.`,
		network: "This code is of a wireless network, and holds no calibration card and no entries of Heeltap.",
		text: (text: string) => `This says “${text}”, which is no calibration card and no entries of Heeltap.`,
		nothing: "There is nothing in it: no calibration card and no entries of Heeltap.",
	},
	mangled: "This is damaged, or only a part of it: scan it again, or have it sent once more.",
	newer: "This was made by a newer version of the app: update the app, then open it again.",
	unchanged: (fault: string) => `${fault} Nothing was changed.`,
};

export type Words = typeof words;
