import type { Stretch } from "../../../domain/datalog/trimReading";
import { NumbersTable } from "../../components/NumbersTable";
import { clockWords, durationWords } from "../../dataLogWords";
import { signedPercent } from "../../shownByte";

/** The steady stretches in numbers, the longest first. */
export function StretchTable({ stretches }: { readonly stretches: readonly Stretch[] }) {
	const banks = stretches[0].banks.length > 1 ? ["Bank 1", "Bank 2"] : [];
	return (
		<NumbersTable
			summary="The steady stretches in numbers"
			caption="The longest stretches first"
			heads={["From", "Length", "Trim", ...banks]}
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
