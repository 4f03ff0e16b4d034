import { suspectedFrom } from "../../domain/doubt/odd";
import type { Figures } from "../../keeper/view";
import { useAppState } from "../app";
import { factsOfCalibration } from "../entryFacts";
import { exactPercent, inTwenty, percent, percentRange } from "../format";
import type { LogItem } from "../logView";
import { unlikelyWords } from "../logWords";
import { warningWords } from "../text";
import { entryScreenWords } from "../words/entry";
import { logScreenWords } from "../words/log";
import { Change } from "./Change";
import { Facts } from "./Facts";
import "./entryMarks.css";

/** What an entry did to the account: the figures before and after, and what did not fit. */
export function EntryEffect({ item }: { readonly item: LogItem }) {
	const { before, after, calibration } = item;
	const words = entryScreenWords();
	if (!after) return null;
	return (
		<section class="card" aria-label={words.did}>
			<h2>{words.did}</h2>
			<SurpriseNote item={item} />
			<Facts
				facts={rows.map(([figure, tell]) => ({
					term: words.figures[figure],
					is: <Change from={before && tell(before)} to={tell(after)} />,
				}))}
			/>
			<p class="small soft">{words.labelsAllowMore}</p>
			{calibration ? (
				<details>
					<summary>{words.inForce}</summary>
					<Facts facts={factsOfCalibration(calibration)} />
				</details>
			) : (
				<p>{words.noneInForce}</p>
			)}
		</section>
	);
}

const rows: readonly (readonly ["median" | "range" | "above" | "below" | "lawful", (figures: Figures) => string])[] = [
	["median", ({ median }) => percent(median)],
	["range", ({ low, high }) => percentRange(low, high)],
	["above", ({ above }) => chanceWords(above)],
	["below", ({ below }) => chanceWords(below)],
	["lawful", ({ lawfulLow, lawfulHigh }) => percentRange(lawfulLow, lawfulHigh)],
];

function chanceWords(chance: number | null): string {
	if (chance === null) return entryScreenWords().noWindow;
	const exactly = chance < 0.0005 || chance > 0.9995 ? "" : ` (${exactPercent(chance)})`;
	return `${inTwenty(chance)}${exactly}`;
}

function SurpriseNote({ item: { surprise, events } }: { readonly item: LogItem }) {
	const lines = useAppState().state.account?.lines ?? [];
	if (!surprise) return null;
	const suspected = lines.slice(suspectedFrom(lines.map(({ event }) => event)));
	const isRecent = suspected.some(({ event }) => events.some(({ id }) => id === event.id));
	const disagrees = surprise.kind === "disagrees";
	const words = warningWords(disagrees ? { code: "disagrees", chance: surprise.chance } : { code: surprise.kind }, "");
	return (
		<div class="surprise stack">
			<h3>{logScreenWords().surprise[surprise.kind]}</h3>
			<p>
				{disagrees ? unlikelyWords(surprise.chance) : words.sure} {words.why}
			</p>
			{isRecent && (
				<a class="button wide" href="#/doubt">
					{entryScreenWords().behind}
				</a>
			)}
		</div>
	);
}
