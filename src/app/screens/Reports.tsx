import { useId, useState } from "preact/hooks";
import { useAppState } from "../app";
import { byNeed, isOver } from "../attention";
import { CarRow } from "../components/CarRow";
import { dateTime, percent, percentRange } from "../format";
import type { OpenedReport } from "../openedReports";
import { type Reports, useReports } from "../useReports";
import { reportWords } from "../words/report";
import "../components/BackupOpener.css";

/** Reports of others' cars, many at once: a tuner sees which are outside their windows. Nothing is kept without "Keep". */
export function ReportsScreen() {
	const { state, now } = useAppState();
	const [opened] = useState(now());
	const reports = useReports();
	const words = reportWords();
	const sort = byNeed(opened);
	const rows = [...reports.opened].sort((a, b) => sort(a.glance, b.glance));
	return (
		<>
			<section class="card">
				<h2>{words.reportsTitle}</h2>
				<p>{words.reportsAbout}</p>
				<OpenFiles reports={reports} />
				<Paste reports={reports} />
			</section>
			{rows.length > 0 && <Status rows={rows} />}
			{reports.notOpened.length > 0 && (
				<section class="card" role="alert" aria-label={words.faultsTitle}>
					<h2>{words.faultsTitle}</h2>
					{reports.notOpened.map(({ name, fault }, i) => (
						<p class="fault" key={i}>
							{words.fault(name, fault)}
						</p>
					))}
				</section>
			)}
			{rows.length > 0 && (
				<ul class="carlist" aria-label={words.list}>
					{rows.map((report) => (
						<Row key={report.glance.carId} report={report} now={opened} onKeep={() => reports.keep(report)} />
					))}
				</ul>
			)}
			{(rows.length > 0 || reports.notOpened.length > 0) && (
				<button type="button" class="button wide" onClick={reports.clear}>
					{words.clear}
				</button>
			)}
			{state.cars.length > 0 && (
				<a class="button wide" href="#/cars">
					{words.toCars}
				</a>
			)}
		</>
	);
}

function Status({ rows }: { readonly rows: readonly OpenedReport[] }) {
	const words = reportWords();
	const over = rows.filter(({ glance }) => isOver(glance)).length;
	const coming = rows.filter(({ check }) => check === "waiting").length;
	return (
		<p role="status">
			<strong>{words.opened(rows.length, over)}</strong>
			{coming > 0 && ` ${words.checking(coming)}`}
		</p>
	);
}

interface RowProps {
	readonly report: OpenedReport;
	readonly now: number;
	readonly onKeep: () => Promise<void>;
}

function Row({ report, now, onKeep }: RowProps) {
	const [busy, setBusy] = useState(false);
	const words = reportWords();
	const { glance, read, check, count, kept } = report;
	// A plain log says nothing before it is reckoned.
	const car = { ...glance, current: read.made !== null || check !== "waiting" };
	async function keep(): Promise<void> {
		setBusy(true);
		await onKeep();
		setBusy(false);
	}
	return (
		<CarRow car={car} now={now}>
			<p class="small">
				{read.made ? words.asOf(dateTime(read.made.at), read.made.app, read.entries) : words.plainLog(read.entries)}{" "}
				{checkWords(report)} {count > 1 && words.severalOf(count)} {read.here && !kept && words.here}
			</p>
			{kept ? (
				<p role="status">
					<strong>{words.isKept}</strong>
				</p>
			) : (
				<button type="button" class="button" aria-label={words.keepCar(glance.name)} disabled={busy} onClick={keep}>
					{words.keep}
				</button>
			)}
		</CarRow>
	);
}

function checkWords({ read, check }: OpenedReport): string {
	const words = reportWords();
	const said = read.glance.figures;
	switch (check) {
		case "waiting":
			return read.made ? words.unchecked : "";
		case "confirmed":
			return words.confirmed;
		case "differs":
			return said ? words.differs(words.saidFigures(percent(said.median), percentRange(said.low, said.high))) : "";
		case "otherModel":
			return words.otherModel;
		case "tooLong":
			return words.tooLong;
		case "plain":
			return "";
	}
}

function OpenFiles({ reports }: { readonly reports: Reports }) {
	const id = useId();
	async function open(input: HTMLInputElement): Promise<void> {
		const files = [...(input.files ?? [])];
		// The same files may be chosen again once they are mended.
		input.value = "";
		await reports.openFiles(files);
	}
	return (
		<div class="stack opener">
			<input
				id={id}
				type="file"
				multiple
				accept=".json,.txt,application/json,text/plain"
				onChange={(event) => open(event.currentTarget)}
			/>
			<label class="button main" for={id}>
				{reportWords().openFiles}
			</label>
		</div>
	);
}

function Paste({ reports }: { readonly reports: Reports }) {
	const words = reportWords();
	const [text, setText] = useState("");
	const [fault, setFault] = useState(false);
	const id = useId();
	return (
		<form
			class="stack"
			onSubmit={(event) => {
				event.preventDefault();
				const found = reports.openText(text);
				setFault(!found && text.trim() !== "");
				if (found) setText("");
			}}
		>
			<div class="field">
				<label for={id}>{words.paste}</label>
				<p class="small soft" id={`${id}-hint`}>
					{words.pasteHint}
				</p>
				<textarea
					id={id}
					class="input"
					rows={2}
					value={text}
					aria-describedby={`${id}-hint`}
					onInput={(event) => setText(event.currentTarget.value)}
				/>
			</div>
			{fault && (
				<p class="fault" role="alert">
					{words.pasteNothing}
				</p>
			)}
			<button type="submit" class="button wide">
				{words.pasteGo}
			</button>
		</form>
	);
}
