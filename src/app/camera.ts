/** The camera as it is needed to scan: the one at the back, given back as soon as the screen is left. */

export type CameraFault = "none" | "refused" | "busy" | "failed";

export interface Camera {
	readonly stream: MediaStream;
	stop(): void;
}

export async function openCamera(): Promise<Camera | CameraFault> {
	// Missing where the page came without encryption, too.
	if (typeof navigator.mediaDevices?.getUserMedia !== "function") return "none";
	try {
		const video = { facingMode: "environment", width: { ideal: 1280 }, height: { ideal: 1280 } };
		const stream = await navigator.mediaDevices.getUserMedia({ video, audio: false });
		const stop = () => {
			for (const track of stream.getTracks()) track.stop();
		};
		return { stream, stop };
	} catch (error) {
		return faultOf(error instanceof DOMException ? error.name : "");
	}
}

function faultOf(name: string): CameraFault {
	switch (name) {
		case "NotFoundError":
		case "OverconstrainedError":
			return "none";
		case "NotAllowedError":
		case "SecurityError":
			return "refused";
		case "NotReadableError":
		case "AbortError":
			return "busy";
		default:
			return "failed";
	}
}
