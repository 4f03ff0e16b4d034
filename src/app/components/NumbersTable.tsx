import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { tableWords } from "../words/table";
import "./NumbersTable.css";

const rowsAtOnce = 50;

interface NumbersTableProps<Row> {
	readonly summary: string;
	/** For whoever can't see the table. */
	readonly caption: string;
	readonly heads: readonly string[];
	/** In the order in which they are shown. */
	readonly rows: readonly Row[];
	readonly row: (row: Row) => ComponentChildren;
	/** A further class of the table's frame. */
	readonly kind?: string;
}

/** The numbers behind a drawing, unfolded on demand and some rows at a time. */
export function NumbersTable<Row>({ summary, caption, heads, rows, row, kind = "" }: NumbersTableProps<Row>) {
	const [shown, setShown] = useState(rowsAtOnce);
	const [open, setOpen] = useState(false);
	return (
		<details onToggle={(event) => setOpen(event.currentTarget.open)}>
			<summary>{summary}</summary>
			{open && (
				<div class="stack">
					{/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
					<section class={`numbers ${kind}`} aria-label={summary} tabIndex={0}>
						<table>
							<caption class="hidden">{caption}</caption>
							<thead>
								<tr>
									{heads.map((head) => (
										<th key={head} scope="col">
											{head}
										</th>
									))}
								</tr>
							</thead>
							<tbody>{rows.slice(0, shown).map(row)}</tbody>
						</table>
					</section>
					{rows.length > shown && (
						<button type="button" class="button wide" onClick={() => setShown(shown + rowsAtOnce)}>
							{tableWords().more(Math.min(rowsAtOnce, rows.length - shown))}
						</button>
					)}
				</div>
			)}
		</details>
	);
}
