import { useState } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import type { VolumeUnit } from "../../domain/units";
import type { AccountView } from "../../keeper/view";
import { useAppState } from "../app";
import { CorrectEntry } from "../components/CorrectEntry";
import { CorrectReading } from "../components/CorrectReading";
import { EntryEffect } from "../components/EntryEffect";
import { Facts } from "../components/Facts";
import { isCorrectable } from "../correctionForm";
import { factsOf, factsOfFill } from "../entryFacts";
import { dateTime, percent } from "../format";
import { fillsIn, idsOf, itemsOf, itemWith, type LogItem, replacementOf, voidedAt } from "../logView";
import { itemKind, itemWords, voidingWords } from "../logWords";
import { unitOf } from "../model";
import { printRoute } from "../route";
import { productName } from "../text";
import { useTakingBack } from "../useTakingBack";
import { entryScreenWords } from "../words/entry";
import { logScreenWords } from "../words/log";
import "../components/entryMarks.css";
import "./Entry.css";

/** One entry of the log, or a whole stop: what it says, what it did, and the ways to put it right. */
export function EntryScreen({ id }: { readonly id: string }) {
	const { state } = useAppState();
	const { account } = state;
	const words = entryScreenWords();
	if (!account) return <p class="soft">{logScreenWords().reading}</p>;
	const items = itemsOf(account);
	const item = itemWith(items, account.events, id);
	return (
		<>
			<a class="button back" href="#/log">
				{words.back}
			</a>
			{item ? (
				<Told key={`${item.isVoid} ${item.id}`} {...{ account, items, item }} />
			) : (
				<p class="fault">{words.notHere(account.car.name)}</p>
			)}
		</>
	);
}

interface ToldProps {
	readonly account: AccountView;
	readonly items: readonly LogItem[];
	readonly item: LogItem;
}

function Told({ account, items, item }: ToldProps) {
	const { state } = useAppState();
	const { car } = account;
	const unit = unitOf(state);
	const words = entryScreenWords();
	const told = itemWords(item, car, unit);
	return (
		<>
			<section class={`card ${item.isVoid ? "void" : ""}`} aria-label={words.says}>
				{item.isVoid && (
					<p>
						<strong class="stamp">{logScreenWords().void}</strong>{" "}
						{words.since(dateTime(voidedAt(item, account.events)))}
					</p>
				)}
				<h2>{item.isVoid ? <s>{told}</s> : told}</h2>
				<Facts facts={factsOf(item, car, unit)} />
				<Fills item={item} account={account} unit={unit} />
				<PlaceLink item={item} />
				<p class="small soft">{words.ids(idsOf(item))}</p>
			</section>
			<EntryEffect item={item} />
			{item.isVoid ? <BringBack items={items} item={item} /> : <Actions account={account} items={items} item={item} />}
			{state.working !== null && (
				<p class="soft" role="status">
					{logScreenWords().reckoningAnew(percent(Math.floor(state.working * 100) / 100))}
				</p>
			)}
		</>
	);
}

/** To what is known of the pumps where it was. */
function PlaceLink({ item: { events, isVoid } }: { readonly item: LogItem }) {
	const place = events.flatMap((event) => ("place" in event && event.place !== undefined ? [event.place] : []))[0];
	if (place === undefined || isVoid) return null;
	return (
		<a class="button wide" href={printRoute({ screen: "place", id: place })}>
			{entryScreenWords().knownOf(place)}
		</a>
	);
}

interface FillsProps {
	readonly item: LogItem;
	readonly account: AccountView;
	readonly unit: VolumeUnit;
}

/** Fuel by fuel, in the order poured. */
function Fills({ item, account, unit }: FillsProps) {
	const fills = fillsIn(item);
	const words = entryScreenWords();
	return (
		<>
			{fills.map((fill) => {
				const line = account.lines.find(({ event }) => event.id === fill.id);
				const after =
					line && fills.length > 1 ? [{ term: words.afterIt, is: words.about(percent(line.figures.median)) }] : [];
				return (
					<div key={fill.id} class="stack">
						<h3>{productName(fill.product)}</h3>
						<Facts facts={[...factsOfFill(fill, unit, account.car.currency), ...after]} />
					</div>
				);
			})}
		</>
	);
}

function Actions({ account, items, item }: ToldProps) {
	const { busy, change } = useTakingBack();
	const [correcting, setCorrecting] = useState(false);
	const [event] = item.events;
	const kind = itemKind(item);
	const words = entryScreenWords();

	async function takeBack(): Promise<void> {
		const here = location.hash;
		const done = await change([], idsOf(item), words.isVoid(kind));
		// The driver may have gone elsewhere while the log was reckoned anew.
		if (done && location.hash === here) location.hash = "#/log";
	}

	async function replace(corrected: LogEvent): Promise<boolean> {
		const here = location.hash;
		const done = await change([], [event.id], words.isCorrected(kind), [corrected]);
		if (done && location.hash === here) location.replace(printRoute({ screen: "entry", id: corrected.id }));
		return done;
	}

	if (correcting && isCorrectable(event))
		return <CorrectEntry event={event} onClose={() => setCorrecting(false)} onReplace={replace} />;
	if (correcting && event.kind === "reading")
		return <CorrectReading event={event} onClose={() => setCorrecting(false)} onReplace={replace} />;
	return (
		<section class="card" aria-label={words.putRight}>
			<h2>{words.wrong}</h2>
			{event.kind === "fill" && (
				<a class="button main" href={printRoute({ screen: "correct", id: event.id })}>
					{words.correct(kind)}
				</a>
			)}
			{(isCorrectable(event) || event.kind === "reading") && (
				<button type="button" class="button main" onClick={() => setCorrecting(true)}>
					{words.correct(kind)}
				</button>
			)}
			<p>{words.voiding(voidingWords(item, items, account.car), kind)}</p>
			<button type="button" class="button wide" disabled={busy} onClick={takeBack}>
				{words.voidThis(kind)}
			</button>
		</section>
	);
}

function BringBack({ items, item }: Pick<ToldProps, "items" | "item">) {
	const { busy, change } = useTakingBack();
	const kind = itemKind(item);
	const words = entryScreenWords();
	const instead = replacementOf(item, items);
	return (
		<section class="card" aria-label={words.putRight}>
			{instead ? (
				<>
					<p>{words.replaced(kind)}</p>
					<a class="button wide" href={printRoute({ screen: "entry", id: instead.id })}>
						{words.seeCorrected(kind)}
					</a>
				</>
			) : (
				<p>{words.countsNot}</p>
			)}
			<button
				type="button"
				class="button wide"
				disabled={busy}
				onClick={() => change(idsOf(item), instead ? idsOf(instead) : [], logScreenWords().countsAgain(kind))}
			>
				{logScreenWords().bringBack}
			</button>
		</section>
	);
}
