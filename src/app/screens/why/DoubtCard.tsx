import type { Why } from "../../../domain/why/why";
import { NumbersTable } from "../../components/NumbersTable";
import { date, percent } from "../../format";
import { knownWords, sourceWords, spanWords } from "../../whyWords";

/** What is not known, by how much knowing it would narrow the range. */
export function DoubtCard({ why: { width, sources, rest, older, stops } }: { readonly why: Why }) {
	const rows = [
		...sources.map((worth, i) => ({ key: String(i), name: sourceWords(worth.source), ...worth })),
		...(rest ? [{ key: "rest", name: restWords(rest.count, sources.length), ...rest }] : []),
	];
	return (
		<section class="card why" aria-label="What the doubt comes from">
			<h2>What the doubt comes from</h2>
			<p class="small">
				A full bar is the doubt now: 9 in 10 span {spanWords(width, width)}. The dark part would go, on average, if that
				one thing were known exactly. The parts overlap and do not add up to the whole: one known fill also tells of
				others from the same pumps.
			</p>
			<ol>
				{rows.map(({ key, name, width: known }) => (
					<li key={key}>
						<span>{name}</span>
						<GoneBar gone={width > 0 ? 1 - known / width : 0} />
						<span class="small soft number">{knownWords(width, known)}</span>
					</li>
				))}
			</ol>
			{older && stops.length > 0 && (
				<p class="small">
					Fuel from before the stop of {date(stops[0].fills[0].event.at)} makes less than 2&nbsp;% of the variance by
					now.
				</p>
			)}
			<NumbersTable
				summary="The same as shares of the variance"
				caption="Share of the variance of the content that goes once one thing is known, and the range that is left"
				heads={["Known exactly", "Share", "9 in 10 span then"]}
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

function restWords(count: number, listed: number): string {
	const what = count === 1 ? "one thing" : `${count} things`;
	return listed > 0 ? `All the rest together, ${what}` : `All of it together, ${what}`;
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
