import { Fragment } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Damage } from "../../keeper/care";
import { useAppState } from "../app";
import { backWords, damageWords, remedyWords } from "../damageWords";
import { dateTime } from "../format";
import { isClockBehind } from "../notices";
import { noticesWords } from "../words/notices";
import { openerWords } from "../words/opener";
import { storageWords } from "../words/storage";
import { BackupOpener } from "./BackupOpener";

/** What is amiss with the log itself, above every screen. */
export function Notices() {
	const { state, now } = useAppState();
	const { damage, account, events } = state;
	const newest = events?.at(-1);
	return (
		<>
			{damage && <DamageNotice damage={damage} />}
			{account && account.unreadable > 0 && <NewerNotice count={account.unreadable} />}
			{newest && isClockBehind(newest, now()) && <ClockNotice newest={newest.at} now={now()} />}
		</>
	);
}

/** Two taps: look, and bring back. */
function DamageNotice({ damage }: { readonly damage: Damage }) {
	const { model, toasts } = useAppState();
	const [looking, setLooking] = useState(false);
	const [busy, setBusy] = useState(false);
	const heading = useRef<HTMLHeadingElement>(null);
	const { cars, copied } = damage;
	const words = noticesWords();
	const missing = cars.reduce((sum, car) => sum + car.missing, 0);
	const lost = cars.reduce((sum, car) => sum + car.lost, 0);
	useEffect(() => {
		// The button that was tapped is gone.
		if (looking) heading.current?.focus();
	}, [looking]);
	async function bringBack(): Promise<void> {
		setBusy(true);
		const done = await model.bringBack();
		setBusy(false);
		if (!done) return;
		// The form for a new car was shown for want of this one.
		if (location.hash === "#/setup") location.replace("#/tank");
		toasts.show(done.back ? backWords(done.back.cars) : words.inOrder, undefined, true);
	}
	return (
		<section class="card" role="alert" aria-label={words.missing}>
			<h2 tabIndex={-1} ref={heading}>
				{words.missing}
			</h2>
			{looking ? (
				<Fragment key="looking">
					<ul class="cautions">
						{cars.map((car) => (
							<li key={car.carId}>
								<strong>{car.name ?? words.aCar}</strong>
								{words.ofCar(damageWords(car))}
							</li>
						))}
					</ul>
					<p>{remedyWords(copied, missing, lost)}</p>
					{copied ? (
						<button type="button" class="button main" disabled={busy} onClick={bringBack}>
							{lost === 0 ? words.bringAll : words.bringSome}
						</button>
					) : null}
					{(!copied || lost > 0) && <BackupOpener label={openerWords().open} />}
					{!copied && (
						<button type="button" class="button wide" disabled={busy} onClick={bringBack}>
							{words.goOn}
						</button>
					)}
				</Fragment>
			) : (
				<Fragment key="told">
					<p>{words.lost}</p>
					<button type="button" class="button main" onClick={() => setLooking(true)}>
						{words.look}
					</button>
				</Fragment>
			)}
		</section>
	);
}

function NewerNotice({ count }: { readonly count: number }) {
	const words = noticesWords();
	return (
		<section class="card" role="alert" aria-label={words.newer}>
			<h2>{words.newer}</h2>
			<p>{words.newerEntries(count)}</p>
			<button type="button" class="button wide" onClick={() => location.reload()}>
				{storageWords().reload}
			</button>
		</section>
	);
}

function ClockNotice({ newest, now }: { readonly newest: string; readonly now: number }) {
	const words = noticesWords();
	return (
		<section class="card" role="alert" aria-label={words.clock}>
			<h2>{words.clock}</h2>
			<p>{words.clockBehind(dateTime(new Date(now).toISOString()), dateTime(newest))}</p>
			<a class="button wide" href="#/log">
				{words.seeLog}
			</a>
		</section>
	);
}
