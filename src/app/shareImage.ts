/** A drawing as a picture file: drawn on a canvas in black on white, and handed to another app or saved. */
import { type Item, markPaths, type Picture } from "./mixPicture";

const ink = "#000000";
const paper = "#ffffff";
const tint = "#e3ebee";
const faint = "#8a8a8a";

/** Pixels for one unit of the drawing: sharp on a phone, small enough for a message. */
const sharpness = 2;

/** A PNG of the drawing; rejects where the browser cannot draw one. */
export function pngOf({ width, height, items }: Picture): Promise<Blob> {
	const canvas = document.createElement("canvas");
	canvas.width = Math.ceil(width * sharpness);
	canvas.height = Math.ceil(height * sharpness);
	const context = canvas.getContext("2d");
	if (!context) return Promise.reject(new Error("this browser has no canvas to draw on"));
	context.scale(sharpness, sharpness);
	context.fillStyle = paper;
	context.fillRect(0, 0, width, height);
	for (const item of items) draw(context, item);
	return new Promise((made, failed) =>
		canvas.toBlob(
			(blob) => (blob ? made(blob) : failed(new Error("this browser could not make a picture"))),
			"image/png",
		),
	);
}

function draw(context: CanvasRenderingContext2D, item: Item): void {
	switch (item.kind) {
		case "text":
			context.fillStyle = ink;
			context.font = `${item.bold ? 700 : 400} ${item.size}px system-ui, sans-serif`;
			context.textAlign = item.anchor === "middle" ? "center" : item.anchor;
			context.fillText(item.text, item.x, item.y);
			return;
		case "mark":
			context.save();
			context.translate(item.x, item.y);
			context.scale(item.size / 16, item.size / 16);
			context.fillStyle = ink;
			context.fill(new Path2D(markPaths[item.verdict]));
			context.restore();
			return;
		case "tint":
			context.fillStyle = tint;
			context.fillRect(item.x, item.y, item.width, item.height);
			return;
		case "line":
			context.strokeStyle = item.strong ? ink : faint;
			context.lineWidth = item.strong ? 1.5 : 0.75;
			context.beginPath();
			context.moveTo(item.x1, item.y1);
			context.lineTo(item.x2, item.y2);
			context.stroke();
			return;
	}
}

/** Hands a picture to another app where the browser can, else saves it. A driver who changed his mind counts as served. */
export async function shareImage(image: Blob, name: string): Promise<"shared" | "saved"> {
	const file = new File([image], `${name}.png`, { type: "image/png" });
	if (canShareImages() && (await shared(file))) return "shared";
	const address = URL.createObjectURL(image);
	const link = document.createElement("a");
	link.href = address;
	link.download = file.name;
	link.click();
	// Some browsers fetch it only after the tap is over.
	setTimeout(() => URL.revokeObjectURL(address), 60_000);
	return "saved";
}

export function canShareImages(): boolean {
	const probe = new File([], "table.png", { type: "image/png" });
	return typeof navigator.canShare === "function" && navigator.canShare({ files: [probe] });
}

async function shared(file: File): Promise<boolean> {
	try {
		await navigator.share({ files: [file] });
		return true;
	} catch (error) {
		return error instanceof DOMException && error.name === "AbortError";
	}
}
