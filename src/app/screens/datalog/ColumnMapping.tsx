import { useId, useState } from "preact/hooks";
import type { OpenedLog } from "../../../datalog/openLog";
import { type Column, type Columns, isOfUse, lacksOf, type Role, roles, unitsOf } from "../../../domain/datalog/role";
import { unitName } from "../../dataLogWords";
import { useTurns } from "../../useTurns";
import { dataLogWords } from "../../words/dataLog";

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
	const { columns: words, roles: roleNames, lacks: lackNames } = dataLogWords();
	const [taken, setTaken] = useState<string | null>(null);
	function tell(at: number, column: Column | null): void {
		const before = columns.findIndex((other, i) => i !== at && column !== null && other?.role === column.role);
		onChange(columns.map((other, i) => (i === at ? column : i === before ? null : other)));
		setTaken(column && before >= 0 ? words.taken(log.headers[before], roleNames[column.role]) : null);
	}
	const turn = useTurns(Math.ceil(log.headers.length / columnsAtOnce));
	const lacks = lacksOf(columns);
	const useful = isOfUse(columns);
	return (
		<section class="stack" aria-label={words.title}>
			<div class="card">
				<h2>{words.title}</h2>
				<p>{words.once}</p>
				<p role="status">
					{lacks.length === 0 ? words.complete : words.lacking(lacks.map((lack) => lackNames[lack]))}
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
			{!useful && <p class="fault">{words.useless}</p>}
			<button type="button" class="button main" disabled={!useful} onClick={onDone}>
				{words.read}
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
	const { columns: words, roles: roleNames } = dataLogWords();
	const units = column ? unitsOf[column.role] : [];
	return (
		<>
			<h3>{header}</h3>
			<p class="small soft number">{sample}</p>
			<div class="field">
				<label for={`${id}-role`}>
					{words.itIs}
					<span class="hidden"> ({header})</span>
				</label>
				<select
					class="input"
					id={`${id}-role`}
					value={column?.role ?? ""}
					onChange={({ currentTarget: { value } }) => onTell(value === "" ? null : { role: value as Role, unit: null })}
				>
					<option value="">{words.notNeeded}</option>
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
						{words.in}
						<span class="hidden"> ({header})</span>
					</label>
					<select
						class="input"
						id={`${id}-unit`}
						value={column.unit ?? ""}
						onChange={({ currentTarget: { value } }) =>
							onTell({ ...column, unit: units.find((unit) => unit === value) ?? null })
						}
					>
						<option value="">{words.asSuggested}</option>
						{units.map((unit) => (
							<option key={unit} value={unit}>
								{unitName(unit)}
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
	const { samples, noSample } = dataLogWords().columns;
	return shown.length === 0 ? noSample : samples(shown);
}
