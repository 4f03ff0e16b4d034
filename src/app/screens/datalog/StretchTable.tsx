import { useState } from "preact/hooks";
import type { Stretch } from "../../../domain/datalog/trimReading";
import { clockWords, durationWords } from "../../dataLogWords";
import { signedPercent } from "../../shownByte";
import "../../components/HistoryTable.css";

const rowsAtOnce = 50;

/** The steady stretches in numbers, the longest first. */
export function StretchTable({ stretches }: { readonly stretches: readonly Stretch[] }) {
	const [rows, setRows] = useState(rowsAtOnce);
	const [open, setOpen] = useState(false);
	const sorted = [...stretches].sort((a, b) => b.toS - b.fromS - (a.toS - a.fromS));
	const banks = stretches[0].banks.length > 1 ? ["Bank 1", "Bank 2"] : [];
	return (
		<details onToggle={(event) => setOpen(event.currentTarget.open)}>
			<summary>The steady stretches in numbers</summary>
			{open && (
				<div class="stack">
					{/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
					<section class="numbers stretches" aria-label="The steady stretches in numbers" tabIndex={0}>
						<table>
							<caption class="hidden">The longest stretches first</caption>
							<thead>
								<tr>
									{["From", "Length", "Trim", ...banks].map((head) => (
										<th key={head} scope="col">
											{head}
										</th>
									))}
								</tr>
							</thead>
							<tbody>
								{sorted.slice(0, rows).map(({ fromS, toS, trim, banks: each }) => (
									<tr key={fromS}>
										<th scope="row">{clockWords(fromS)}</th>
										<td>{durationWords(toS - fromS)}</td>
										<td>{signedPercent(trim)}</td>
										{banks.map((bank, i) => (
											<td key={bank}>{signedPercent(each[i])}</td>
										))}
									</tr>
								))}
							</tbody>
						</table>
					</section>
					{sorted.length > rows && (
						<button type="button" class="button wide" onClick={() => setRows(rows + rowsAtOnce)}>
							Show {Math.min(rowsAtOnce, sorted.length - rows)} more rows
						</button>
					)}
				</div>
			)}
		</details>
	);
}
