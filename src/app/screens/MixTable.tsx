import { useRef } from "preact/hooks";
import type { LogEvent, Product } from "../../domain/event";
import type { MixTable } from "../../domain/plan/mixTable";
import type { VolumeUnit } from "../../domain/units";
import type { Car } from "../../domain/vehicle";
import type { AccountView, TankNow } from "../../keeper/view";
import { isoWithOffset, useAppState } from "../app";
import { backupName } from "../backupFile";
import { GaugeField, gaugeWords } from "../components/GaugeField";
import { MixNumbers } from "../components/MixNumbers";
import { MixPicture, MixSign } from "../components/MixPicture";
import { MixProducts } from "../components/MixProducts";
import { dateTime } from "../format";
import { leastRoomL, mixGridFor } from "../mixGrid";
import { gridPicture, judged, sheetPicture, signs } from "../mixPicture";
import { assumedWords, mixFinding, windowWords } from "../mixWords";
import { unitOf } from "../model";
import { canShareImages, pngOf, shareImage } from "../shareImage";
import { newTable, readTable, type TableDraft, tableAsk } from "../tableDraft";
import { productName, productRange } from "../text";
import { useAnswer } from "../useAnswer";
import { useDraft } from "../useDraft";
import { useMeasures } from "../useMeasures";
import { usePrintedSheet } from "../usePrintedSheet";
import { mixesWords } from "../words/mixes";
import "./MixTable.css";
import { useMoment } from "../moment";

/** The rule-of-thumb table made honest: what amounts of two fuels make of this tank, now. */
export function MixTableScreen() {
	const { state } = useAppState();
	const { account, now: tank } = state;
	const words = mixesWords();
	if (!account) return <p class="soft">{words.readingLog}</p>;
	if (!tank) {
		return (
			<div class="card">
				<h2>{words.nothingKnown}</h2>
				<p>{words.nothingKnownMore}</p>
				<a class="button main" href="#/fill">
					{words.record}
				</a>
			</div>
		);
	}
	return <Asked key={account.car.id} account={account} tank={tank} />;
}

interface AskedProps {
	readonly account: AccountView;
	readonly tank: TankNow;
}

function Asked({ account, tank }: AskedProps) {
	const { state, model } = useAppState();
	const { car, events, count } = account;
	const opened = useMoment(events);
	const unit = unitOf(state);
	const { draft, change } = useDraft<TableDraft>(
		`${car.id}/table`,
		(raw) => readTable(raw, opened),
		() => newTable(events),
	);
	const room = car.tank.capacityL * (1 - (draft?.gauge ?? 0));
	const tooFull = room < leastRoomL;
	const key = draft && !tooFull ? JSON.stringify([car, count, unit, draft, opened]) : null;
	const { answer, failed } = useAnswer(key, async () => {
		if (!draft) return null;
		const table = await model.table(car.id, tableAsk(draft, opened), mixGridFor(room, unit));
		return table && { table, draft };
	});
	const words = mixesWords();
	if (!draft) return <p class="soft">{words.opening}</p>;
	return (
		<>
			<Choices draft={draft} events={events} onChange={change} now={opened} />
			{tooFull ? (
				<p class="fault">{words.full}</p>
			) : failed ? (
				<p class="fault">{words.failed}</p>
			) : answer ? (
				<Shown {...answer} car={car} tank={tank} unit={unit} at={opened} />
			) : (
				<p class="soft" role="status">
					{words.reckoning}
				</p>
			)}
		</>
	);
}

interface ChoicesProps {
	readonly draft: TableDraft;
	readonly events: readonly LogEvent[];
	readonly now: number;
	readonly onChange: (draft: TableDraft) => void;
}

function Choices({ draft, events, now, onChange }: ChoicesProps) {
	const words = mixesWords();
	const fuels = words.inOrder(productName(draft.first), productName(draft.second));
	return (
		<>
			<details class="card">
				<summary>{words.gaugeNow(draft.gauge === null ? null : gaugeWords(draft.gauge))}</summary>
				<GaugeField
					label={words.gauge}
					hint={words.gaugeHint}
					value={draft.gauge}
					onChange={(gauge) => onChange({ ...draft, gauge, lookedAt: now })}
				/>
			</details>
			<details class="card">
				<summary>{draft.place === null ? fuels : `${fuels}, ${draft.place}`}</summary>
				<MixProducts draft={draft} events={events} onChange={onChange} />
			</details>
		</>
	);
}

interface ShownProps {
	readonly table: MixTable;
	readonly draft: TableDraft;
	readonly car: Car;
	readonly tank: TankNow;
	readonly unit: VolumeUnit;
	readonly at: number;
}

function Shown({ table: { grid, rows }, draft, car, tank, unit, at }: ShownProps) {
	const { toasts } = useAppState();
	const box = useRef<HTMLDivElement>(null);
	const paper = useMeasures(box);
	usePrintedSheet();
	const names = [productName(draft.first), productName(draft.second)] as const;
	const table = { grid, rows: rows.filter(({ cells, toClick }) => [...cells, toClick].some(({ mix }) => mix)) };
	const told = { table, names, unit };
	const words = mixesWords();
	if (table.rows.length === 0) return <p class="fault">{words.nothingFits}</p>;

	const finding = mixFinding(table, names, unit);
	const { estimate, level, calibration } = tank;
	const assumed = assumedWords(
		{ content: estimate, levelL: level.high, capacityL: car.tank.capacityL, gauge: draft.gauge },
		unit,
	);
	const labelled = (i: 0 | 1, product: Product) => words.fuel(names[i], productRange(product));
	const fuels = words.fuels(labelled(0, draft.first), labelled(1, draft.second), draft.place);
	const lines = [words.carAt(car.name, dateTime(isoWithOffset(at))), assumed, fuels, windowWords(calibration)];
	const sheet = sheetPicture(told, words.heading, finding ? [...lines, finding] : lines, {
		width: 600,
		text: 15,
	});
	const label = words.label(...names, finding);

	async function share(): Promise<void> {
		try {
			const name = backupName(words.fileName(car.name), isoWithOffset(at).slice(0, 10));
			const done = await shareImage(await pngOf(sheet), name);
			if (done === "saved") toasts.show(words.savedAs(`${name}.png`));
		} catch {
			toasts.show(words.noPicture);
		}
	}

	return (
		<>
			<section class="card" aria-label={words.table}>
				<h2>{words.heading}</h2>
				{finding && <p>{finding}</p>}
				<p>{assumed}</p>
				{/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
				<section class="mixbox" aria-label={words.drawn} tabIndex={0}>
					<div ref={box} />
					<MixPicture picture={gridPicture(told, paper)} label={label} />
				</section>
				<ul class="mixsigns small">
					{table.rows.some(judged) &&
						signs.map((verdict) => (
							<li key={verdict}>
								<MixSign verdict={verdict} /> {words.verdicts[verdict]}
							</li>
						))}
				</ul>
				<p class="small">{words.notes}</p>
				<p class="small">{fuels}</p>
				<p class="small">{windowWords(calibration)}</p>
				<p class="small">
					<strong>{words.caution}</strong>
				</p>
				<button type="button" class="button wide" onClick={share}>
					{canShareImages() ? words.send : words.save}
				</button>
				<button type="button" class="button wide" onClick={() => window.print()}>
					{words.print}
				</button>
				<details>
					<summary>{words.inWords}</summary>
					<MixNumbers table={table} names={names} unit={unit} caption={label} />
				</details>
			</section>
			<div class="printsheet" aria-hidden="true">
				<MixPicture picture={sheet} label="" />
			</div>
		</>
	);
}
