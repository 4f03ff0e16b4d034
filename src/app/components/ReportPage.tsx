import type { ComponentChildren } from "preact";
import { dateTime } from "../format";
import type { ReportEntry, ReportSection, ReportTold } from "../reportTold";
import { Facts } from "./Facts";
import "./ReportPage.css";

interface ReportPageProps {
	readonly told: ReportTold;
	/** The picture, under the verdict. */
	readonly children: ComponentChildren;
}

/** A tank report as a page: the same on the screen and on paper. */
export function ReportPage({ told, children }: ReportPageProps) {
	return (
		<article class="card report" aria-label={told.title}>
			<header class="stack">
				<h2>{told.title}</h2>
				<p class="small">{told.made}</p>
				<p class="verdictline">{told.verdict.line}</p>
				<p>{told.verdict.more}</p>
			</header>
			{children}
			{told.sections.map((section) => (
				<Section key={section.title} section={section} />
			))}
			<p>
				<strong>{told.plain}</strong>
			</p>
		</article>
	);
}

function Section({ section: { title, facts, lines, entries, close } }: { readonly section: ReportSection }) {
	return (
		<section class="stack" aria-label={title}>
			<h3>{title}</h3>
			{facts && <Facts facts={facts} />}
			{lines?.map((line) => (
				<p key={line}>{line}</p>
			))}
			{entries && <Entries entries={entries} />}
			{close && <p>{close}</p>}
		</section>
	);
}

function Entries({ entries }: { readonly entries: readonly ReportEntry[] }) {
	return (
		<ul class="behind">
			{entries.map(({ id, at, line, more }) => (
				<li key={id}>
					<time class="small soft" dateTime={at}>
						{dateTime(at)}
					</time>
					<span>{line}</span>
					{more.map((each) => (
						<span class="more" key={each}>
							{each}
						</span>
					))}
				</li>
			))}
		</ul>
	);
}
