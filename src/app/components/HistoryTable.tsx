import { dateTime, exactPercent, exactPercentRange, percent, percentRange } from "../format";
import { findingOf, type Shown } from "../historyView";
import { logScreenWords } from "../words/log";
import { NumbersTable } from "./NumbersTable";

/** The numbers behind the chart, the newest first. */
export function HistoryTable({ shown }: { readonly shown: Shown }) {
	const words = logScreenWords();
	return (
		<NumbersTable
			summary={words.numbers}
			caption={findingOf(shown)}
			heads={words.heads}
			rows={[...shown.points].reverse()}
			row={({ id, iso, figures, window, reading, side }) => (
				<tr key={id}>
					<th scope="row">{dateTime(iso)}</th>
					<td>
						{percent(figures.median)}
						{side !== "inside" && ` (${words.side[side]})`}
					</td>
					<td>{percentRange(figures.low, figures.high)}</td>
					<td>{window ? exactPercentRange(window[0], window[1]) : words.noWindow}</td>
					<td>{reading && `${exactPercent(reading.value)} ± ${exactPercent(reading.sd)}`}</td>
				</tr>
			)}
		/>
	);
}
