import "./DoubtBar.css";

interface DoubtBarProps {
	/** Ends of what is possible, and what is most likely. */
	readonly from: number;
	readonly to: number;
	readonly mark: number;
	/** What lies before and after nothing, in a word or two. */
	readonly before: string;
	readonly after: string;
}

/** A range around nothing, drawn: where it lies, how wide it is, and its middle. What it says stands in words beside it. */
export function DoubtBar({ from, to, mark, before, after }: DoubtBarProps) {
	const [low, high] = [Math.min(0, from), Math.max(0, to)];
	const reach = Math.max(high, -low) * 1.1 || 1;
	// Nothing stays in the middle, so that the side is seen before the size.
	const x = (value: number) => 50 + (50 * value) / reach;
	return (
		<div class="doubtbar">
			<svg viewBox="0 0 100 30" preserveAspectRatio="none" aria-hidden="true">
				<line class="rail" x1={0} x2={100} y1={15} y2={15} />
				<rect class="span" x={x(from)} width={Math.max(0.8, x(to) - x(from))} y={7} height={16} />
				<line class="zero" x1={50} x2={50} y1={0} y2={30} />
				<line class="mark" x1={x(mark)} x2={x(mark)} y1={4} y2={26} />
			</svg>
			<div class="ends small" aria-hidden="true">
				<span>← {before}</span>
				<span>{after} →</span>
			</div>
		</div>
	);
}
