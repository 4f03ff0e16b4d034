import { useState } from "preact/hooks";
import type { Car } from "../../../domain/vehicle";
import type { LiveState } from "../../../live/state";
import { linkTo } from "../../../share/link";
import { packedPairing } from "../../../share/liveCode";
import { useApp } from "../../app";
import { appAddress } from "../../appAddress";
import { backupName } from "../../backupFile";
import { Facts } from "../../components/Facts";
import { LinkButtons } from "../../components/LinkButtons";
import { QrCode } from "../../components/QrCode";
import { ago, dateTime } from "../../format";
import { liveSentence } from "../../liveSentence";
import { liveWords } from "../../words/live";

interface LiveCardProps {
	/** Null: it is still to come. */
	readonly car: Car | null;
	readonly live: LiveState;
}

/** A car that is live: how it stands, the code for another phone, and the way out. */
export function LiveCard({ car, live }: LiveCardProps) {
	const { now } = useApp();
	const words = liveWords();
	const { phase, since, heard, news } = live;
	const said = (instant: number | null) =>
		instant === null ? words.never : ago(new Date(instant).toISOString(), now());
	const trouble = phase === "offline" || phase === "refused";
	return (
		<>
			<section class="card">
				<h2>{words.title}</h2>
				<p role="status" class={trouble ? "fault" : undefined}>
					<strong>{liveSentence(live)}</strong>
				</p>
				<Facts
					facts={[
						...(trouble && since !== null
							? [
									{
										term: phase === "refused" ? words.refusedSince : words.sinceWhen,
										is: dateTime(new Date(since).toISOString()),
									},
								]
							: []),
						{ term: words.heard, is: said(heard) },
						{ term: words.news, is: said(news) },
						{ term: words.server, is: live.server },
					]}
				/>
			</section>
			<NotTaken live={live} />
			{car && <NextPhone key={car.id} car={car} />}
			{car && <SwitchOff car={car} />}
		</>
	);
}

function NotTaken({ live: { refused, held } }: { readonly live: LiveState }) {
	const words = liveWords();
	const lines = [
		...(refused.damaged > 0 ? [words.refusedDamaged(refused.damaged)] : []),
		...(refused.newer > 0 ? [words.refusedNewer(refused.newer)] : []),
		...(refused.contradicting > 0 ? [words.refusedContradicting(refused.contradicting)] : []),
		...(refused.again > 0 ? [words.refusedAgain(refused.again)] : []),
		...(held > 0 ? [words.held(held)] : []),
	];
	if (lines.length === 0) return null;
	return (
		<section class="card" role="status">
			<h2>{words.refusedTitle}</h2>
			{lines.map((line) => (
				<p key={line}>{line}</p>
			))}
		</section>
	);
}

function NextPhone({ car }: { readonly car: Car }) {
	const { model } = useApp();
	const words = liveWords();
	const [link, setLink] = useState<string | null>(null);
	async function show(): Promise<void> {
		const answer = await model.live({ do: "pairing", carId: car.id, carName: car.name });
		if (answer.pairing) setLink(linkTo(appAddress(), "live", packedPairing(answer.pairing)));
	}
	return (
		<section class="card">
			<h2>{words.nextPhone}</h2>
			<p>{words.nextPhoneMore}</p>
			{link === null ? (
				<button type="button" class="button main" onClick={show}>
					{words.show}
				</button>
			) : (
				<>
					<QrCode text={link} label={words.code(car.name)} stands="low" />
					<LinkButtons
						link={link}
						links={[link]}
						head={words.fileHead(car.name)}
						name={words.fileName(backupName(car.name, "").replace(/-$/, ""))}
					/>
				</>
			)}
		</section>
	);
}

function SwitchOff({ car }: { readonly car: Car }) {
	const { model, toasts } = useApp();
	const words = liveWords();
	async function off(): Promise<void> {
		const { states } = await model.live({ do: "off", carId: car.id });
		if (states.length === 0) await model.saveSettings({ live: false });
		toasts.show(words.switchedOff(car.name));
		location.hash = "#/car";
	}
	return (
		<>
			<details class="card">
				<summary>{words.offTitle}</summary>
				<p>{words.offMore}</p>
				<button type="button" class="button wide" onClick={off}>
					{words.offNow}
				</button>
			</details>
			<section class="card">
				<a class="button wide" href="#/car">
					{words.back}
				</a>
			</section>
		</>
	);
}
