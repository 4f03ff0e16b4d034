import { dateTime, exactPercent, exactPercentRange, percent, percentRange } from "../format";
import { findingOf, type Shown } from "../historyView";
import { NumbersTable } from "./NumbersTable";

/** The numbers behind the chart, the newest first. */
export function HistoryTable({ shown }: { readonly shown: Shown }) {
	return (
		<NumbersTable
			summary="The same in numbers"
			caption={findingOf(shown)}
			heads={["When", "Most likely", "9 in 10", "Window", "Measured"]}
			rows={[...shown.points].reverse()}
			row={({ id, iso, figures, window, reading, side }) => (
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
			)}
		/>
	);
}
