import type { Stretch } from "../../../domain/datalog/trimReading";
import { NumbersTable } from "../../components/NumbersTable";
import { clockWords, durationWords } from "../../dataLogWords";
import { signedPercent } from "../../shownByte";
import { dataLogWords } from "../../words/dataLog";

/** The steady stretches in numbers, the longest first. */
export function StretchTable({ stretches }: { readonly stretches: readonly Stretch[] }) {
	const words = dataLogWords();
	const banks = stretches[0].banks.length > 1 ? words.banks : [];
	return (
		<NumbersTable
			summary={words.table}
			caption={words.tableCaption}
			heads={[...words.heads, ...banks]}
			rows={[...stretches].sort((a, b) => b.toS - b.fromS - (a.toS - a.fromS))}
			row={({ fromS, toS, trim, banks: each }) => (
				<tr key={fromS}>
					<th scope="row">{clockWords(fromS)}</th>
					<td>{durationWords(toS - fromS)}</td>
					<td>{signedPercent(trim)}</td>
					{banks.map((bank, i) => (
						<td key={bank}>{signedPercent(each[i])}</td>
					))}
				</tr>
			)}
			kind="stretches"
		/>
	);
}
