import { useRef, useState } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
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
import { gridPicture, judged, notes, sheetPicture, signs } from "../mixPicture";
import { assumedWords, mixCaution, mixFinding, windowWords } from "../mixWords";
import { unitOf } from "../model";
import { canShareImages, pngOf, shareImage } from "../shareImage";
import { newTable, readTable, type TableDraft, tableAsk } from "../tableDraft";
import { productName, productRange } from "../text";
import { useAnswer } from "../useAnswer";
import { useDraft } from "../useDraft";
import { useMeasures } from "../useMeasures";
import { usePrintedSheet } from "../usePrintedSheet";
import "./MixTable.css";

/** The rule-of-thumb table made honest: what amounts of two fuels make of this tank, now. */
export function MixTableScreen() {
	const { state } = useAppState();
	const { account, now: tank } = state;
	if (!account) return <p class="soft">Reading the log…</p>;
	if (!tank) {
		return (
			<div class="card">
				<h2>Nothing is known of this tank yet</h2>
				<p>What a mix makes of the tank hangs on what the tank holds. Record a fill, and there is a table.</p>
				<a class="button main" href="#/fill">
					Record a fill
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
	const { state, model, now } = useAppState();
	const [opened] = useState(now());
	const { car, events, count } = account;
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
	if (!draft) return <p class="soft">Opening the form…</p>;
	return (
		<>
			<Choices draft={draft} events={events} onChange={change} now={opened} />
			{tooFull ? (
				<p class="fault">The gauge says full: nothing more goes in, so there is nothing to mix.</p>
			) : failed ? (
				<p class="fault">The table could not be reckoned. Reload the app and try again.</p>
			) : answer ? (
				<Shown {...answer} car={car} tank={tank} unit={unit} at={opened} />
			) : (
				<p class="soft" role="status">
					Reckoning the table…
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
	return (
		<>
			<details class="card">
				<summary>{draft.gauge === null ? "Gauge now: not looked" : `Gauge now: ${gaugeWords(draft.gauge)}`}</summary>
				<GaugeField
					label="Fuel gauge now"
					hint="Without a look the tank may hold anything from nothing to what the last entry left, and the ranges are wide for it."
					value={draft.gauge}
					onChange={(gauge) => onChange({ ...draft, gauge, lookedAt: now })}
				/>
			</details>
			<details class="card">
				<summary>
					{productName(draft.first)}, then {productName(draft.second)}
					{draft.place === null ? "" : `, ${draft.place}`}
				</summary>
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
	if (table.rows.length === 0)
		return <p class="fault">None of these amounts fits into the tank: look at the gauge again.</p>;

	const finding = mixFinding(table, names, unit);
	const { estimate, level, calibration } = tank;
	const assumed = assumedWords(
		{ content: estimate, levelL: level.high, capacityL: car.tank.capacityL, gauge: draft.gauge },
		unit,
	);
	const fuels = `${names[0]}: ${productRange(draft.first)}. ${names[1]}: ${productRange(draft.second)}.${draft.place === null ? "" : ` Bought at ${draft.place}.`}`;
	const lines = [`${car.name}, ${dateTime(isoWithOffset(at))}`, assumed, fuels, windowWords(calibration)];
	const sheet = sheetPicture(told, "What a mix makes of this tank", finding ? [...lines, finding] : lines, {
		width: 600,
		text: 15,
	});
	const label = `What amounts of “${names[0]}” and then “${names[1]}” make of this tank. ${finding ?? ""} The same stands below in words.`;

	async function share(): Promise<void> {
		try {
			const name = backupName(`mixes ${car.name}`, isoWithOffset(at).slice(0, 10));
			const done = await shareImage(await pngOf(sheet), name);
			if (done === "saved") toasts.show(`Saved as ${name}.png.`);
		} catch {
			toasts.show("This browser could not make a picture of it. Printing works all the same.");
		}
	}

	return (
		<>
			<section class="card" aria-label="Table of mixes">
				<h2>What a mix makes of this tank</h2>
				{finding && <p>{finding}</p>}
				<p>{assumed}</p>
				{/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys */}
				<section class="mixbox" aria-label="The table drawn" tabIndex={0}>
					<div ref={box} />
					<MixPicture picture={gridPicture(told, paper)} label={label} />
				</section>
				<ul class="mixsigns small">
					{table.rows.some(judged) &&
						signs.map(([verdict, words]) => (
							<li key={verdict}>
								<MixSign verdict={verdict} /> {words}
							</li>
						))}
				</ul>
				<p class="small">{notes}</p>
				<p class="small">{fuels}</p>
				<p class="small">{windowWords(calibration)}</p>
				<p class="small">
					<strong>{mixCaution}</strong>
				</p>
				<button type="button" class="button wide" onClick={share}>
					{canShareImages() ? "Send as a picture" : "Save as a picture"}
				</button>
				<button type="button" class="button wide" onClick={() => window.print()}>
					Print it
				</button>
				<details>
					<summary>The same in words</summary>
					<MixNumbers table={table} names={names} unit={unit} caption={label} />
				</details>
			</section>
			<div class="printsheet" aria-hidden="true">
				<MixPicture picture={sheet} label="" />
			</div>
		</>
	);
}
