import { useState } from "preact/hooks";
import type { MonthCost } from "../../domain/cost";
import { monthName, unpricedWords } from "../costWords";
import { money } from "../money";
import { costsWords } from "../words/costs";
import "./MonthBars.css";

const monthsAtOnce = 6;

interface MonthBarsProps {
	/** In order. */
	readonly months: readonly MonthCost[];
	readonly currency: string | undefined;
}

/** A bar for each month's cost, the newest first; what lacks a price is said at its bar. */
export function MonthBars({ months, currency }: MonthBarsProps) {
	const [shown, setShown] = useState(monthsAtOnce);
	const words = costsWords();
	const most = Math.max(...months.map(({ cost }) => cost));
	const left = months.length - shown;
	return (
		<>
			<ul class="months" aria-label={words.monthly}>
				{months
					.slice(-shown)
					.reverse()
					.map((month) => (
						<li key={month.month}>
							<span class="pair">
								<span>{monthName(month.month)}</span>
								<strong class="number">
									{month.unpriced === month.fills ? words.notKnown : money(month.cost, currency)}
								</strong>
							</span>
							<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
								<rect class="rail" width={100} height={10} />
								<rect class="bar" width={most > 0 ? (100 * month.cost) / most : 0} height={10} />
							</svg>
							{month.unpriced > 0 && <span class="small">{unpricedWords(month)}</span>}
						</li>
					))}
			</ul>
			{left > 0 && (
				<button type="button" class="button wide" onClick={() => setShown(shown + monthsAtOnce)}>
					{words.olderMonths(left)}
				</button>
			)}
		</>
	);
}
