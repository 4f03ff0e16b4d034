import { suspectedFrom } from "../../domain/doubt/odd";
import type { Figures } from "../../keeper/view";
import { useAppState } from "../app";
import { factsOfCalibration } from "../entryFacts";
import { exactPercent, inTwenty, percent, percentRange } from "../format";
import type { LogItem } from "../logView";
import { surpriseTitle, unlikelyWords } from "../logWords";
import { warningWords } from "../text";
import { Change } from "./Change";
import { Facts } from "./Facts";
import "./entryMarks.css";

/** What an entry did to the account: the figures before and after, and what did not fit. */
export function EntryEffect({ item }: { readonly item: LogItem }) {
	const { before, after, calibration } = item;
	if (!after) return null;
	return (
		<section class="card" aria-label="What it did">
			<h2>What it did</h2>
			<SurpriseNote item={item} />
			<Facts
				facts={rows.map(({ term, tell }) => ({ term, is: <Change from={before && tell(before)} to={tell(after)} /> }))}
			/>
			<p class="small soft">
				“Labels allow” is where the content lies if every pump kept to its label and every look at the gauge was within
				three standard deviations; readings of the content do not count there.
			</p>
			{calibration ? (
				<details>
					<summary>The calibration in force</summary>
					<Facts facts={factsOfCalibration(calibration)} />
				</details>
			) : (
				<p>No calibration was in force, so there is no window to hold this against.</p>
			)}
		</section>
	);
}

const rows: readonly { readonly term: string; readonly tell: (figures: Figures) => string }[] = [
	{ term: "Most likely", tell: ({ median }) => percent(median) },
	{ term: "9 in 10", tell: ({ low, high }) => percentRange(low, high) },
	{ term: "Above the window", tell: ({ above }) => chanceWords(above) },
	{ term: "Below the window", tell: ({ below }) => chanceWords(below) },
	{ term: "Labels allow", tell: ({ lawfulLow, lawfulHigh }) => percentRange(lawfulLow, lawfulHigh) },
];

function chanceWords(chance: number | null): string {
	if (chance === null) return "no window";
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
			<h3>{surpriseTitle[surprise.kind]}</h3>
			<p>
				{disagrees ? unlikelyWords(surprise.chance) : words.sure} {words.why}
			</p>
			{isRecent && (
				<a class="button wide" href="#/doubt">
					What may be behind it
				</a>
			)}
		</div>
	);
}
