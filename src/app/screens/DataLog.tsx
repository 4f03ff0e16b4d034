import type { LogRead } from "../../datalog/readLog";
import { warmC, windowS } from "../../domain/datalog/constants";
import type { LogEvent } from "../../domain/event";
import type { Car } from "../../domain/vehicle";
import { isoWithOffset, useAppState } from "../app";
import { flashedAt, offersOf, savedOf } from "../dataLogReadings";
import { type DataLogDraft, useDataLog } from "../useDataLog";
import { useTurns } from "../useTurns";
import { dataLogWords } from "../words/dataLog";
import { ChooseLog } from "./datalog/ChooseLog";
import { ColumnMapping } from "./datalog/ColumnMapping";
import { EthanolCard } from "./datalog/EthanolCard";
import { LoadCard } from "./datalog/LoadCard";
import { LogFacts } from "./datalog/LogFacts";
import { SaveReading } from "./datalog/SaveReading";
import { SteadyCard } from "./datalog/SteadyCard";
import "./DataLog.css";

/** Takes in the log of any logger, shows what it tells of the fuel, and offers that as a reading. */
export function DataLogScreen() {
	const { car, events } = useAppState().state;
	if (!car || !events) return <p class="soft late">{dataLogWords().openingLog}</p>;
	return <ForCar key={car.id} car={car} events={events} />;
}

interface ForCarProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
}

function ForCar({ car, events }: ForCarProps) {
	const { draft, ready, stage, change, choose, remap, tell, read, cancel } = useDataLog(car.id);
	const words = dataLogWords();
	if (!ready) return <p class="soft late">{words.openingForm}</p>;
	switch (stage.is) {
		case "choosing":
			return (
				<>
					{!stage.refusal && <About />}
					<ChooseLog label={words.choose} refusal={stage.refusal} onChoose={choose} />
					{stage.refusal && <About />}
				</>
			);
		case "opening":
			return (
				<section class="card">
					<p role="status">{words.opening}</p>
				</section>
			);
		case "mapping":
			return (
				<>
					<ColumnMapping
						log={stage.log}
						columns={stage.columns}
						onChange={(columns) => tell(stage, columns)}
						onDone={() => read(stage)}
					/>
					<button type="button" class="button wide" onClick={cancel}>
						{words.anotherFile}
					</button>
				</>
			);
		case "reading":
			return (
				<section class="card" aria-label={words.reading}>
					<p role="status">{words.readingFile(stage.file.name)}</p>
					<progress class="readshare" max={1} value={stage.share} aria-label={words.shareRead} />
					<button type="button" class="button wide" onClick={cancel}>
						{words.stop}
					</button>
				</section>
			);
		case "read":
			return (
				<>
					<LogFacts
						name={stage.file.name}
						read={stage.read}
						counts={savedOf(events, stage.read.fingerprint).ids.size > 0}
						onRemap={() => remap(stage)}
					/>
					<Told car={car} events={events} file={stage.file} read={stage.read} draft={draft} change={change} />
					<button type="button" class="button wide" onClick={cancel}>
						{words.anotherLog}
					</button>
				</>
			);
	}
}

function About() {
	const words = dataLogWords();
	return (
		<section class="card" aria-label={words.about}>
			<h2>{words.about}</h2>
			<p>{words.aboutAny}</p>
			<p>{words.aboutSteady(warmC, windowS)}</p>
			<p class="small">{words.aboutSafety}</p>
			<a class="button wide" href="#/measure">
				{words.otherWays}
			</a>
		</section>
	);
}

interface ToldProps extends ForCarProps {
	readonly file: File;
	readonly read: LogRead;
	readonly draft: DataLogDraft;
	readonly change: (part: Partial<DataLogDraft>) => void;
}

function Told({ car, events, file, read, draft, change }: ToldProps) {
	const { state, now } = useAppState();
	const words = dataLogWords();
	const turn = useTurns(7);
	const { instruments } = state.settings;
	const { finding } = read;
	const at = draft.when ? draft.when.at : recordedAt(read, file, now());
	const calibration = flashedAt(car, events, at === null ? now() : Date.parse(at));
	const offers = offersOf(read, { calibration, source: draft.source, instruments });
	const chosen = offers.find(({ kind }) => kind === draft.chosen) ?? offers[0];
	return (
		<>
			<SteadyCard finding={finding} calibration={calibration} told={turn >= 2} drawn={turn >= 3} />
			{turn >= 4 && finding.load && <LoadCard load={finding.load} trim={finding.steady?.found?.value ?? null} />}
			{turn >= 5 && finding.ethanol && (
				<EthanolCard ethanol={finding.ethanol} source={draft.source} onSource={(source) => change({ source })} />
			)}
			{turn >= 6 && !calibration && (
				<section class="card">
					<p>{words.noCalibration}</p>
					<a class="button wide" href="#/calibration">
						{words.enterCalibration}
					</a>
				</section>
			)}
			{turn >= 7 && chosen && (
				<SaveReading
					car={car}
					events={events}
					fingerprint={read.fingerprint}
					offers={offers}
					chosen={chosen.kind}
					onChoose={(chosen) => change({ chosen })}
					at={at}
					onWhen={(at) => change({ when: { at } })}
				/>
			)}
		</>
	);
}

const yearMs = 365 * 86_400_000;

/** When a log ended by its own dates, else when its file was written; null, which is now, where neither makes sense. */
function recordedAt({ ended }: LogRead, file: File, now: number): string | null {
	const likely = [ended, file.lastModified].find((at) => at !== null && at <= now && at > now - yearMs);
	return typeof likely === "number" ? isoWithOffset(likely) : null;
}
