/** QR codes in pictures: by the browser's own detector where there is one, else by a decoder that loads with the first picture. */

interface Detector {
	detect(image: ImageBitmapSource): Promise<{ readonly rawValue: string }[]>;
}

/** No typing of the page knows it yet (WICG Shape Detection). */
interface DetectorClass {
	new (options: { formats: string[] }): Detector;
	getSupportedFormats(): Promise<string[]>;
}

export interface QrReader {
	/** The text of a code in the picture; null: none is found. `thoroughly`: as long as a person waits, not as a film does. */
	read(image: ImageBitmap | HTMLVideoElement, thoroughly: boolean): Promise<string | null>;
}

/** Rejects where the decoder can't be loaded. */
export async function openQrReader(): Promise<QrReader> {
	const native = await nativeDetector();
	const decoder = native ? null : await ownDecoder();
	return {
		async read(image, thoroughly) {
			// Where the system's detector fails, as some do without its service, ours is loaded after all.
			const found = await native?.detect(image).catch(() => []);
			if (found?.[0]) return found[0].rawValue;
			if (native && !thoroughly) return null;
			return (decoder ?? (await ownDecoder()))(image, thoroughly);
		},
	};
}

async function nativeDetector(): Promise<Detector | null> {
	const { BarcodeDetector } = globalThis as { readonly BarcodeDetector?: DetectorClass };
	try {
		const formats = (await BarcodeDetector?.getSupportedFormats()) ?? [];
		return BarcodeDetector && formats.includes("qr_code") ? new BarcodeDetector({ formats: ["qr_code"] }) : null;
	} catch {
		return null;
	}
}

/** Longest side of what is looked at, pixels: a film is to be fluent, a photograph is large and worth a second look. */
const filmSize = 900;
const photoSizes = [1200, 2400, 700];

async function ownDecoder(): Promise<QrReader["read"]> {
	const { decodeQR } = await import("qr/decode.js");
	const canvas = document.createElement("canvas");
	const context = canvas.getContext("2d", { willReadFrequently: true });
	return async (image, thoroughly) => {
		const [width, height] = "videoWidth" in image ? [image.videoWidth, image.videoHeight] : [image.width, image.height];
		if (!context || width === 0 || height === 0) return null;
		for (const size of thoroughly ? photoSizes : [filmSize]) {
			const scale = Math.min(1, size / Math.max(width, height));
			canvas.width = Math.max(1, Math.round(width * scale));
			canvas.height = Math.max(1, Math.round(height * scale));
			context.drawImage(image, 0, 0, canvas.width, canvas.height);
			try {
				return decodeQR(context.getImageData(0, 0, canvas.width, canvas.height), thoroughly ? { timeLimit: 1000 } : {});
			} catch {
				// None of that size: there may be one in another.
			}
		}
		return null;
	};
}
