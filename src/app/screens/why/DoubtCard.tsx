import type { Why } from "../../../domain/why/why";
import { NumbersTable } from "../../components/NumbersTable";
import { date, percent } from "../../format";
import { knownWords, sourceWords, spanWords } from "../../whyWords";
import { whyWords } from "../../words/why";

/** What is not known, by how much knowing it would narrow the range. */
export function DoubtCard({ why: { width, sources, rest, older, stops } }: { readonly why: Why }) {
	const words = whyWords();
	const rows = [
		...sources.map((worth, i) => ({ key: String(i), name: sourceWords(worth.source), ...worth })),
		...(rest ? [{ key: "rest", name: words.rest(rest.count, sources.length > 0), ...rest }] : []),
	];
	return (
		<section class="card why" aria-label={words.doubtFrom}>
			<h2>{words.doubtFrom}</h2>
			<p class="small">{words.doubtBar(spanWords(width, width))}</p>
			<ol>
				{rows.map(({ key, name, width: known }) => (
					<li key={key}>
						<span>{name}</span>
						<GoneBar gone={width > 0 ? 1 - known / width : 0} />
						<span class="small soft number">{knownWords(width, known)}</span>
					</li>
				))}
			</ol>
			{older && stops.length > 0 && <p class="small">{words.olderFuel(date(stops[0].fills[0].event.at))}</p>}
			<NumbersTable
				summary={words.shares}
				caption={words.sharesCaption}
				heads={words.shareHeads}
				rows={rows}
				row={({ key, name, share, width: known }) => (
					<tr key={key}>
						<th scope="row">{name}</th>
						<td>{percent(share)}</td>
						<td>{spanWords(Math.min(width, known), width)}</td>
					</tr>
				)}
			/>
		</section>
	);
}

/** A doubt, and what of it is gone; what it says stands in words beside it. */
export function GoneBar({ gone, all = 1 }: { readonly gone: number; readonly all?: number }) {
	return (
		<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
			<rect class="doubt" width={100 * all} height={10} />
			<rect class="gone" width={100 * Math.min(all, Math.max(0, gone))} height={10} />
		</svg>
	);
}
