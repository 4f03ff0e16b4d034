/** Where the app lives, without file and fragment: what its links begin with. */
export function appAddress(): string {
	return new URL("./", document.baseURI).href;
}
