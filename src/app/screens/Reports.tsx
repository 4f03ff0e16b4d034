import { useEffect, useState } from "preact/hooks";
import { useAppState } from "../app";
import { byNeed, isOver } from "../attention";
import { CarRow } from "../components/CarRow";
import { FileOpener } from "../components/FileOpener";
import { PasteField } from "../components/PasteField";
import { dateTime, percent, percentRange } from "../format";
import type { OpenedReport } from "../openedReports";
import { useUnsaved } from "../unsaved";
import { useReports } from "../useReports";
import { reportWords } from "../words/report";

/** Files wait for the screen: see src/pwa/launch.ts and src/sw/putBy.ts. */
const waiting = /^#\/reports\/file\d*$/;

/** Reports of others' cars, many at once: a tuner sees which are outside their windows. Nothing is kept without "Keep". */
export function ReportsScreen() {
	const { state, now } = useAppState();
	const [opened] = useState(now());
	const reports = useReports();
	useEffect(() => {
		const take = () => {
			if (waiting.test(location.hash)) reports.openWaiting();
		};
		take();
		// More may come while these are looked at.
		window.addEventListener("hashchange", take);
		return () => window.removeEventListener("hashchange", take);
	}, []);
	useUnsaved(reports.opened.length > 0);
	const words = reportWords();
	const sort = byNeed(opened);
	const rows = [...reports.opened].sort((a, b) => sort(a.glance, b.glance));
	return (
		<>
			<section class="card">
				<h2>{words.reportsTitle}</h2>
				<p>{words.reportsAbout}</p>
				<FileOpener label={words.openFiles} main multiple onFiles={reports.openFiles} />
				<PasteField
					label={words.paste}
					hint={words.pasteHint}
					button={words.pasteGo}
					nothing={words.pasteNothing}
					onText={reports.openText}
				/>
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
		case "gone":
			return words[check];
		case "failed":
			return read.made ? words.notChecked : words.notReckoned;
		case "plain":
			return "";
	}
}
