import { useMemo } from "preact/hooks";
import { encodeQR } from "qr";
import { codesWords } from "../words/codes";
import "./QrCode.css";

interface QrCodeProps {
	readonly text: string;
	/** What is in it, for those who can't see it. */
	readonly label: string;
	/** How much of it may be dirty or torn: more makes it denser. */
	readonly stands: "low" | "medium";
}

/** The white rim that readers need (ISO/IEC 18004). */
const rim = 4;

/** Black on white, whatever light the screen is in: readers expect it so. */
export function QrCode({ text, label, stands }: QrCodeProps) {
	const { size, path } = useMemo(() => drawn(text, stands), [text, stands]);
	return (
		<svg
			class="qr"
			role="img"
			aria-label={codesWords().code(label)}
			viewBox={`0 0 ${size} ${size}`}
			shape-rendering="crispEdges"
		>
			<rect class="paper" width={size} height={size} />
			<path class="ink" d={path} />
		</svg>
	);
}

function drawn(text: string, stands: QrCodeProps["stands"]): { size: number; path: string } {
	const rows = encodeQR(text, "raw", { ecc: stands, border: rim });
	const path = rows.flatMap((row, y) =>
		row.flatMap((dark, x) => {
			if (!dark || row[x - 1]) return [];
			const light = row.indexOf(false, x);
			return [`M${x} ${y}h${light - x}v1h${x - light}z`];
		}),
	);
	return { size: rows.length, path: path.join("") };
}
