import type { MixTable } from "../../domain/plan/mixTable";
import type { VolumeUnit } from "../../domain/units";
import { exactVolume, volume } from "../format";
import { cellSentence } from "../mixWords";
import { mixesWords } from "../words/mixes";
import "./NumbersTable.css";

interface MixNumbersProps {
	readonly table: MixTable;
	readonly names: readonly [string, string];
	readonly unit: VolumeUnit;
	readonly caption: string;
}

/** The table of mixes as a table: every cell in words. */
export function MixNumbers({ table, names, unit, caption }: MixNumbersProps) {
	const { grid, rows } = table;
	const words = mixesWords();
	return (
		// biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
		<section class="numbers" aria-label={words.tableInWords} tabIndex={0}>
			<table>
				<caption class="hidden">{caption}</caption>
				<thead>
					<tr>
						<th scope="col">{words.inOrder(...names)}</th>
						{grid.second.map((litres) => (
							<th key={litres} scope="col">
								{exactVolume(litres, unit)}
							</th>
						))}
						<th scope="col">{words.toClick}</th>
					</tr>
				</thead>
				<tbody>
					{rows.map(({ first, cells, toClick }) => (
						<tr key={first}>
							<th scope="row">{exactVolume(first, unit)}</th>
							{cells.map((cell, i) => (
								<td key={grid.second[i]}>{cellSentence(cell)}</td>
							))}
							<td>
								{toClick.mix ? words.about(cellSentence(toClick), volume(toClick.litres, unit)) : cellSentence(toClick)}
							</td>
						</tr>
					))}
				</tbody>
			</table>
		</section>
	);
}
