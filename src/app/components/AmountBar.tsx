import { insideStretch, leanStretch } from "../../domain/estimator/stretch";
import type { VolumeUnit } from "../../domain/units";
import { fromLitres } from "../../domain/units";
import { budgetsOf } from "../../domain/warnings";
import { typedNumber } from "../typedNumber";
import { type PreviewSource, usePreviewed } from "../usePreview";
import { fillWords } from "../words/fill";
import "./AmountBar.css";
import "./slider.css";

interface AmountBarProps {
	readonly source: PreviewSource;
	/** L. */
	readonly amount: number;
	/** End of the scale, L. */
	readonly most: number;
	readonly unit: VolumeUnit;
	readonly onSlide: (amountInUnit: string) => void;
}

const width = 1000;

/** A slider for the amount, over a ruler that shows where the blend would be inside the window and where the lean limit lies. */
export function AmountBar({ source, amount, most, unit, onSlide }: AmountBarProps) {
	const preview = usePreviewed(source);
	const outlook = preview?.outlook ?? null;
	const budgets = budgetsOf(preview?.calibration ?? null);
	const inside = outlook && insideStretch(outlook, budgets);
	const lean = outlook && leanStretch(outlook, budgets);
	const x = (litres: number) => Math.min(width, (litres / most) * width);
	const step = unit === "L" ? 0.5 : 0.1;
	return (
		<div class="amountbar">
			<svg viewBox={`0 0 ${width} 40`} preserveAspectRatio="none" aria-hidden="true">
				<line class="rail" x1={0} x2={width} y1={36} y2={36} />
				{inside && (
					<path class="inside" d={`M${x(inside.from)} 12 V36 H${Math.max(x(inside.from) + 6, x(inside.to))} V12`} />
				)}
				{lean && (
					<rect class="past" x={x(lean.from)} y={20} width={Math.max(6, x(lean.to) - x(lean.from))} height={16} />
				)}
			</svg>
			<input
				type="range"
				class="slider"
				aria-label={fillWords().sliding(unit)}
				min={0}
				max={fromLitres(most, unit)}
				step={step}
				value={fromLitres(amount, unit)}
				onInput={(event) => onSlide(rounded(event.currentTarget.valueAsNumber, step))}
			/>
		</div>
	);
}

function rounded(value: number, step: number): string {
	return value === 0 ? "" : typedNumber(Math.round(value / step) / Math.round(1 / step));
}
