import type { VolumeUnit } from "../../domain/units";
import type { Car } from "../../domain/vehicle";
import { dateTime, exactPercentRange, percent, percentRange } from "../format";
import { type LogItem, outsideOf } from "../logView";
import { itemWords, outsideWords } from "../logWords";
import { printRoute } from "../route";
import { logScreenWords } from "../words/log";
import { Change } from "./Change";
import "./entryMarks.css";

interface EntryRowProps {
	readonly item: LogItem;
	readonly car: Car;
	readonly unit: VolumeUnit;
	readonly onOpen: (id: string) => void;
	/** For what is void; null while something is being written. */
	readonly onBringBack: (() => void) | null;
}

/** One entry of the log: what happened, and what it did to the estimate. */
export function EntryRow({ item, car, unit, onOpen, onBringBack }: EntryRowProps) {
	const words = logScreenWords();
	const told = itemWords(item, car, unit);
	return (
		<li class={`entry ${item.isVoid ? "void" : ""}`}>
			<a href={printRoute({ screen: "entry", id: item.id })} id={`entry-${item.id}`} onClick={() => onOpen(item.id)}>
				<span class="small soft">
					<time dateTime={item.at}>{dateTime(item.at)}</time>
					{item.isVoid && <strong class="stamp">{words.void}</strong>}
				</span>
				<span class="what">{item.isVoid ? <s>{told}</s> : told}</span>
				<Effect item={item} />
			</a>
			{item.isVoid && (
				<button
					type="button"
					class="button"
					disabled={!onBringBack}
					aria-label={words.bringBackThis(told)}
					onClick={() => onBringBack?.()}
				>
					{words.bringBack}
				</button>
			)}
		</li>
	);
}

function Effect({ item }: { readonly item: LogItem }) {
	const { before, after, surprise, calibration, events } = item;
	const words = logScreenWords();
	if (events[0].kind === "calibration" && calibration)
		return <span>{words.windowFrom(exactPercentRange(...calibration.window))}</span>;
	if (!after) return null;
	return (
		<>
			<span>
				<Change from={before && percent(before.median)} to={percent(after.median)} />, {words.nineInTen}{" "}
				<span class="figure">{percentRange(after.low, after.high)}</span>
			</span>
			{surprise && <strong class="surprise">{words.surprise[surprise.kind]}</strong>}
			{outsideOf(after, calibration).map((outside) => (
				<span class={`outside ${outside.side}`} key={outside.side}>
					<span aria-hidden="true">{outside.side === "above" ? "▲ " : "▼ "}</span>
					{outsideWords(outside)}
				</span>
			))}
		</>
	);
}
