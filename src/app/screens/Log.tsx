import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import type { VolumeUnit } from "../../domain/units";
import type { Car } from "../../domain/vehicle";
import type { AccountView } from "../../keeper/view";
import { useAppState } from "../app";
import { EntryRow } from "../components/EntryRow";
import { HistoryChart } from "../components/HistoryChart";
import { HistoryTable } from "../components/HistoryTable";
import { percent } from "../format";
import { historyOf, type Span, shownOf } from "../historyView";
import { keepPlace, type LogPlace, takePlace } from "../logPlace";
import { idsOf, itemsOf, type LogItem, monthsOf, replacementOf } from "../logView";
import { itemKind, monthWords } from "../logWords";
import { unitOf } from "../model";
import { useTakingBack } from "../useTakingBack";
import { locale } from "../words/language";
import { logScreenWords } from "../words/log";
import "./Log.css";

const rowsAtFirst = 60;
const rowsMore = 120;

/** What happened, and what became of the content. */
export function LogScreen() {
	const { state } = useAppState();
	const { account, working } = state;
	if (!account) return <Working share={working} before={false} />;
	return (
		<>
			<Working share={working} before={true} />
			{account.unreadable > 0 && <p class="fault">{logScreenWords().unreadable(account.unreadable)}</p>}
			<Told key={account.car.id} account={account} />
		</>
	);
}

function Working({ share, before }: { readonly share: number | null; readonly before: boolean }) {
	const words = logScreenWords();
	if (share === null) return before ? null : <p class="soft">{words.reading}</p>;
	const done = percent(Math.floor(share * 100) / 100);
	return (
		<p class="soft" role="status">
			{before ? words.fromBefore(done) : words.reckoning(done)}
		</p>
	);
}

function Told({ account }: { readonly account: AccountView }) {
	const { state, now } = useAppState();
	const { car } = account;
	const [place, setPlace] = useState<LogPlace>(
		() => takePlace(car.id) ?? { car: car.id, span: "stops", rows: rowsAtFirst, withVoid: false, entry: null },
	);
	const items = useMemo(() => itemsOf(account), [account]);
	const history = useMemo(() => historyOf(car, items), [car, items]);
	const shown = useMemo(() => shownOf(history, place.span, now()), [history, place.span]);
	const voids = items.filter(({ isVoid }) => isVoid).length;
	const told = items.filter(({ isVoid }) => place.withVoid || !isVoid).reverse();
	const { busy, bringBack } = useBringingBack(items);
	useReturnTo(place.entry);
	// Kept as long as it stays the same: dozens of rows need not be compared for another chart above them.
	const kept = useRef(place);
	kept.current = place;
	const unit = unitOf(state);
	const words = logScreenWords();
	const months = useMemo(
		() => (
			<Months
				items={told.slice(0, place.rows)}
				car={car}
				unit={unit}
				onOpen={(entry) => keepPlace({ ...kept.current, entry })}
				onBringBack={busy ? null : bringBack}
			/>
		),
		[items, unit, busy, place.rows, place.withVoid],
	);

	if (items.length === 0) {
		return (
			<div class="card">
				<h2>{words.nothing}</h2>
				<p>{words.nothingMore}</p>
				<a class="button main" href="#/fill">
					{words.record}
				</a>
			</div>
		);
	}
	return (
		<>
			{shown && (
				<section class="card" aria-label={words.overTime}>
					<h2>{words.overTime}</h2>
					<Spans chosen={place.span} onChoose={(span) => setPlace({ ...place, span })} />
					<HistoryChart shown={shown} />
					<HistoryTable shown={shown} />
				</section>
			)}
			<a class="button wide" href="#/costs">
				{words.costs}
			</a>
			{voids > 0 && (
				<button
					type="button"
					class="button wide"
					aria-pressed={place.withVoid}
					onClick={() => setPlace({ ...place, withVoid: !place.withVoid })}
				>
					{words.showVoid(voids)}
				</button>
			)}
			{months}
			{told.length > place.rows && (
				<button type="button" class="button wide" onClick={() => setPlace({ ...place, rows: place.rows + rowsMore })}>
					{words.older((told.length - place.rows).toLocaleString(locale))}
				</button>
			)}
		</>
	);
}

interface MonthsProps {
	/** The newest first. */
	readonly items: readonly LogItem[];
	readonly car: Car;
	readonly unit: VolumeUnit;
	readonly onOpen: (entry: string) => void;
	readonly onBringBack: ((item: LogItem) => void) | null;
}

function Months({ items, car, unit, onOpen, onBringBack }: MonthsProps) {
	return (
		<>
			{monthsOf(items).map(({ at, items: inMonth }) => (
				<section class="card month" key={monthWords(at)} aria-label={monthWords(at)}>
					<h2>{monthWords(at)}</h2>
					<ul>
						{inMonth.map((item) => (
							<EntryRow
								key={`${item.isVoid} ${item.id}`}
								item={item}
								car={car}
								unit={unit}
								onOpen={onOpen}
								onBringBack={onBringBack && (() => onBringBack(item))}
							/>
						))}
					</ul>
				</section>
			))}
		</>
	);
}

function useBringingBack(items: readonly LogItem[]) {
	const { busy, change } = useTakingBack();
	return {
		busy,
		bringBack(item: LogItem): void {
			const instead = replacementOf(item, items);
			const words = logScreenWords();
			const said = instead ? words.countsInstead(itemKind(item)) : words.countsAgain(itemKind(item));
			change(idsOf(item), instead ? idsOf(instead) : [], said);
		},
	};
}

/** Back at the entry one came from, once it is drawn. */
function useReturnTo(entry: string | null): void {
	useEffect(() => {
		const link = entry === null ? null : document.getElementById(`entry-${entry}`);
		link?.scrollIntoView?.({ block: "center" });
		link?.focus({ preventScroll: true });
	}, []);
}

const spans: readonly Span[] = ["stops", "months", "all"];

function Spans({ chosen, onChoose }: { readonly chosen: Span; readonly onChoose: (span: Span) => void }) {
	const words = logScreenWords();
	return (
		// biome-ignore lint/a11y/useSemanticElements: a fieldset is for forms, these are views
		<div class="row spans" role="group" aria-label={words.shown}>
			{spans.map((span) => (
				<button type="button" class="button" key={span} aria-pressed={span === chosen} onClick={() => onChoose(span)}>
					{words.spans[span]}
				</button>
			))}
		</div>
	);
}
