import { useState } from "preact/hooks";
import { dateTime, exactPercent, exactPercentRange, percent, percentRange } from "../format";
import { findingOf, type Shown } from "../historyView";
import "./HistoryTable.css";

const rowsAtOnce = 50;

/** The numbers behind the chart, the newest first. */
export function HistoryTable({ shown }: { readonly shown: Shown }) {
	const [rows, setRows] = useState(rowsAtOnce);
	const [open, setOpen] = useState(false);
	const { points } = shown;
	return (
		<details onToggle={(event) => setOpen(event.currentTarget.open)}>
			<summary>The same in numbers</summary>
			{open && (
				<div class="stack">
					{/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
					<section class="numbers" aria-label="The same in numbers" tabIndex={0}>
						<table>
							<caption class="hidden">{findingOf(shown)}</caption>
							<thead>
								<tr>
									{["When", "Most likely", "9 in 10", "Window", "Measured"].map((head) => (
										<th key={head} scope="col">
											{head}
										</th>
									))}
								</tr>
							</thead>
							<tbody>
								{points
									.slice(-rows)
									.reverse()
									.map(({ id, iso, figures, window, reading, side }) => (
										<tr key={id}>
											<th scope="row">{dateTime(iso)}</th>
											<td>
												{percent(figures.median)}
												{side !== "inside" && ` (${side})`}
											</td>
											<td>{percentRange(figures.low, figures.high)}</td>
											<td>{window ? exactPercentRange(window[0], window[1]) : "none"}</td>
											<td>{reading && `${exactPercent(reading.value)} ± ${exactPercent(reading.sd)}`}</td>
										</tr>
									))}
							</tbody>
						</table>
					</section>
					{points.length > rows && (
						<button type="button" class="button wide" onClick={() => setRows(rows + rowsAtOnce)}>
							Show {Math.min(rowsAtOnce, points.length - rows)} more rows
						</button>
					)}
				</div>
			)}
		</details>
	);
}
