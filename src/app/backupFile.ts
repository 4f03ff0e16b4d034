/** The log on its way out of the app: as a download, or handed to another app. */

/** `heeltap-the-grey-one-2026-06-01`, without its ending. */
export function backupName(carName: string, today: string): string {
	const plain = carName
		.normalize("NFKD")
		.replace(/\p{Mark}/gu, "")
		.toLowerCase()
		.replace(/[^\p{Letter}\p{Number}]+/gu, "-");
	// By characters: half of one is no name for a file.
	const slug = [...plain].slice(0, 40).join("").replace(/^-|-$/g, "");
	return `heeltap-${slug || "car"}-${today}`;
}

export function download(text: string, name: string): void {
	saved(new Blob([text], { type: "application/json" }), `${name}.json`);
}

/** Links with words around them, as a card and codes travel in a file. */
export function saveText(text: string, name: string): void {
	saved(new Blob([text], { type: "text/plain" }), `${name}.txt`);
}

function saved(file: Blob, name: string): void {
	const address = URL.createObjectURL(file);
	const link = document.createElement("a");
	link.href = address;
	link.download = name;
	link.click();
	// Some browsers fetch it only after the tap is over.
	setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** Chrome shares no .json; as .txt the file passes everywhere and opens here all the same. */
function sharedFile(text: string, name: string): { readonly files: File[] } {
	return { files: [new File([text], `${name}.txt`, { type: "text/plain" })] };
}

export function canShareFiles(): boolean {
	return typeof navigator.canShare === "function" && navigator.canShare(sharedFile("", "heeltap"));
}

/** `stopped`: the driver changed his mind. */
export async function share(text: string, name: string): Promise<"sent" | "stopped" | "refused"> {
	try {
		await navigator.share(sharedFile(text, name));
		return "sent";
	} catch (error) {
		return error instanceof DOMException && error.name === "AbortError" ? "stopped" : "refused";
	}
}
