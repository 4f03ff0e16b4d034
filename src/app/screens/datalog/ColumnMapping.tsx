import { useId, useState } from "preact/hooks";
import type { OpenedLog } from "../../../datalog/openLog";
import { type Column, type Columns, isOfUse, lacksOf, type Role, roles, unitsOf } from "../../../domain/datalog/role";
import { lackWords, roleNames, unitNames } from "../../dataLogWords";
import { useTurns } from "../../useTurns";

interface ColumnMappingProps {
	readonly log: OpenedLog;
	readonly columns: Columns;
	readonly onChange: (columns: Columns) => void;
	readonly onDone: () => void;
}

const columnsAtOnce = 6;
/** Characters of a value that are shown. */
const longestSample = 30;

/** What each column is, told once for every log with these headers. */
export function ColumnMapping({ log, columns, onChange, onDone }: ColumnMappingProps) {
	const [taken, setTaken] = useState<string | null>(null);
	function tell(at: number, column: Column | null): void {
		const before = columns.findIndex((other, i) => i !== at && column !== null && other?.role === column.role);
		onChange(columns.map((other, i) => (i === at ? column : i === before ? null : other)));
		setTaken(column && before >= 0 ? `“${log.headers[before]}” is no longer read as ${roleNames[column.role]}.` : null);
	}
	const turn = useTurns(Math.ceil(log.headers.length / columnsAtOnce));
	const lacks = lacksOf(columns);
	const useful = isOfUse(columns);
	return (
		<section class="stack" aria-label="What is in the columns?">
			<div class="card">
				<h2>What is in the columns?</h2>
				<p>Tell it once: files with the same headers are then read the same way. What you do not know can stay out.</p>
				<p role="status">
					{lacks.length === 0
						? "All that is needed is there."
						: `For a fuel trim there is still missing: ${lacks.map((lack) => lackWords[lack]).join("; ")}.`}
					{taken && ` ${taken}`}
				</p>
			</div>
			<ul class="columns">
				{log.headers.slice(0, turn * columnsAtOnce).map((header, i) => (
					<li class="card" key={header}>
						<MappedColumn
							header={header}
							sample={sampleOf(log, i)}
							column={columns[i]}
							onTell={(column) => tell(i, column)}
						/>
					</li>
				))}
			</ul>
			{!useful && (
				<p class="fault">Nothing can be read off the log yet: tell at least the columns that are missing above.</p>
			)}
			<button type="button" class="button main" disabled={!useful} onClick={onDone}>
				Read the log like this
			</button>
		</section>
	);
}

interface MappedColumnProps {
	readonly header: string;
	readonly sample: string;
	readonly column: Column | null;
	readonly onTell: (column: Column | null) => void;
}

function MappedColumn({ header, sample, column, onTell }: MappedColumnProps) {
	const id = useId();
	const units = column ? unitsOf[column.role] : [];
	return (
		<>
			<h3>{header}</h3>
			<p class="small soft number">{sample}</p>
			<div class="field">
				<label for={`${id}-role`}>
					It is<span class="hidden"> ({header})</span>
				</label>
				<select
					class="input"
					id={`${id}-role`}
					value={column?.role ?? ""}
					onChange={({ currentTarget: { value } }) => onTell(value === "" ? null : { role: value as Role, unit: null })}
				>
					<option value="">not needed</option>
					{roles.map((role) => (
						<option key={role} value={role}>
							{roleNames[role]}
						</option>
					))}
				</select>
			</div>
			{column && units.length > 1 && (
				<div class="field">
					<label for={`${id}-unit`}>
						In<span class="hidden"> ({header})</span>
					</label>
					<select
						class="input"
						id={`${id}-unit`}
						value={column.unit ?? ""}
						onChange={({ currentTarget: { value } }) =>
							onTell({ ...column, unit: units.find((unit) => unit === value) ?? null })
						}
					>
						<option value="">as the values suggest</option>
						{units.map((unit) => (
							<option key={unit} value={unit}>
								{unitNames[unit]}
							</option>
						))}
					</select>
				</div>
			)}
		</>
	);
}

/** A few of its values, none twice. */
function sampleOf({ rows }: OpenedLog, at: number): string {
	const values = new Set(rows.map((row) => (row[at] ?? "").trim()).filter((value) => value !== ""));
	const shown = [...values].slice(0, 4).map((value) => value.slice(0, longestSample));
	return shown.length === 0 ? "Empty at the beginning of the log." : `Such as ${shown.join(" · ")}`;
}
