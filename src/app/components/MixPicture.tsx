import { type Item, markPaths, type Picture } from "../mixPicture";
import "./MixPicture.css";

interface MixPictureProps {
	readonly picture: Picture;
	/** What it says, in a sentence. */
	readonly label: string;
}

/** A table of mixes as drawn. */
export function MixPicture({ picture: { width, height, items }, label }: MixPictureProps) {
	return (
		<svg
			class="mixpicture"
			viewBox={`0 0 ${width} ${height}`}
			width={width}
			height={height}
			role="img"
			aria-label={label}
		>
			{items.map((item, i) => (
				<Drawn key={i} item={item} />
			))}
		</svg>
	);
}

function Drawn({ item }: { readonly item: Item }) {
	switch (item.kind) {
		case "text":
			return (
				<text x={item.x} y={item.y} font-size={item.size} font-weight={item.bold ? 700 : 500} text-anchor={item.anchor}>
					{item.text}
				</text>
			);
		case "mark":
			return (
				<path
					class={`mark ${item.verdict}`}
					d={markPaths[item.verdict]}
					transform={`translate(${item.x} ${item.y}) scale(${item.size / 16})`}
				/>
			);
		case "tint":
			return <rect class="tint" x={item.x} y={item.y} width={item.width} height={item.height} />;
		case "line":
			return <line class={item.strong ? "strong" : "faint"} x1={item.x1} x2={item.x2} y1={item.y1} y2={item.y2} />;
	}
}

/** One of its signs, beside its meaning. */
export function MixSign({ verdict }: { readonly verdict: keyof typeof markPaths }) {
	return (
		<svg class="mixpicture" viewBox="-8 -8 16 16" width="1em" height="1em" aria-hidden="true">
			<path class={`mark ${verdict}`} d={markPaths[verdict]} />
		</svg>
	);
}
