import { useEffect, useId, useRef, useState } from "preact/hooks";
import { type CameraFault, openCamera } from "../camera";
import { openQrReader } from "../readQr";
import { codesWords } from "../words/codes";
import "./FileOpener.css";
import "./ScanCode.css";

interface ScanCodeProps {
	/** Called with each code that is not the one before; while it shows one, the camera goes on. */
	readonly onText: (text: string) => void;
}

/** Reads codes off the camera, or off a picture where there is none. */
export function ScanCode({ onText }: ScanCodeProps) {
	const words = codesWords();
	const [filming, setFilming] = useState(false);
	const [fault, setFault] = useState<string | null>(null);
	const id = useId();
	function begin(): void {
		setFault(null);
		setFilming(true);
	}
	function end(why: CameraFault | "decoder"): void {
		setFilming(false);
		setFault(why === "decoder" ? words.decoderMissing : words.camera[why]);
	}
	async function openPicture(input: HTMLInputElement): Promise<void> {
		const file = input.files?.[0];
		// The same file may be chosen again.
		input.value = "";
		setFault(null);
		if (!file) return;
		const found = await codeIn(file);
		if ("text" in found) onText(found.text);
		else setFault(found.fault);
	}
	return (
		<div class="stack opener">
			{filming ? (
				<>
					<Film onText={onText} onFault={end} />
					<button type="button" class="button wide" onClick={() => setFilming(false)}>
						{words.stopScanning}
					</button>
				</>
			) : (
				<button type="button" class="button main" onClick={begin}>
					{words.scan}
				</button>
			)}
			<input id={id} type="file" accept="image/*" onChange={(event) => openPicture(event.currentTarget)} />
			<label class="button wide" for={id}>
				{words.scanPicture}
			</label>
			{fault && (
				<p class="fault" role="alert">
					{fault}
				</p>
			)}
		</div>
	);
}

/** The text of the code in a picture file, or a sentence why there is none. */
export async function codeIn(file: Blob): Promise<{ readonly text: string } | { readonly fault: string }> {
	const words = codesWords();
	let picture: ImageBitmap;
	try {
		picture = await createImageBitmap(file);
	} catch {
		return { fault: words.noPicture };
	}
	try {
		const text = await (await openQrReader()).read(picture, true);
		return text === null ? { fault: words.noCode } : { text };
	} catch {
		return { fault: words.decoderMissing };
	} finally {
		picture.close();
	}
}

interface FilmProps {
	readonly onText: (text: string) => void;
	readonly onFault: (why: CameraFault | "decoder") => void;
}

/** Between two looks, ms: the page stays fluent, and a code that is held still is read at once. */
const lookEveryMs = 120;

function Film({ onText, onFault }: FilmProps) {
	const words = codesWords();
	const video = useRef<HTMLVideoElement>(null);
	const heard = useRef(onText);
	heard.current = onText;
	useEffect(() => {
		let over = false;
		let stop = () => {};
		async function film(): Promise<void> {
			const [reader, camera] = await Promise.all([openQrReader().catch(() => null), openCamera()]);
			if (typeof camera !== "string") stop = camera.stop;
			if (over) return stop();
			if (typeof camera === "string") return onFault(camera);
			if (!reader || !video.current) return onFault("decoder");
			video.current.srcObject = camera.stream;
			await video.current.play().catch(() => {});
			let last = "";
			while (!over) {
				const text = video.current ? await reader.read(video.current, false) : null;
				if (!over && text !== null && text !== last) {
					last = text;
					heard.current(text);
				}
				await new Promise((passed) => setTimeout(passed, lookEveryMs));
			}
		}
		film();
		return () => {
			over = true;
			stop();
		};
	}, []);
	return (
		<>
			<video class="film" ref={video} playsInline muted aria-label={words.picture} />
			<p class="small soft" role="status">
				{words.scanning}
			</p>
		</>
	);
}
