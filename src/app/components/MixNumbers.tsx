import type { MixTable } from "../../domain/plan/mixTable";
import type { VolumeUnit } from "../../domain/units";
import { exactVolume, volume } from "../format";
import { cellSentence } from "../mixWords";
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
	return (
		// biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
		<section class="numbers" aria-label="The table in words" tabIndex={0}>
			<table>
				<caption class="hidden">{caption}</caption>
				<thead>
					<tr>
						<th scope="col">
							{names[0]}, then {names[1]}
						</th>
						{grid.second.map((litres) => (
							<th key={litres} scope="col">
								{exactVolume(litres, unit)}
							</th>
						))}
						<th scope="col">to the click</th>
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
								{cellSentence(toClick)}
								{toClick.mix && ` (about ${volume(toClick.litres, unit)})`}
							</td>
						</tr>
					))}
				</tbody>
			</table>
		</section>
	);
}
