import { Fragment } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Damage } from "../../keeper/care";
import { useAppState } from "../app";
import { backWords, damageWords, remedyWords } from "../damageWords";
import { dateTime } from "../format";
import { isClockBehind } from "../notices";
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
		toasts.show(done.back ? backWords(done.back.cars) : "The log is in order again.", undefined, true);
	}
	const title = "Part of the log is missing on this phone";
	return (
		<section class="card" role="alert" aria-label={title}>
			<h2 tabIndex={-1} ref={heading}>
				{title}
			</h2>
			{looking ? (
				<Fragment key="looking">
					<ul class="cautions">
						{cars.map((car) => (
							<li key={car.carId}>
								<strong>{car.name ?? "A car"}</strong>: {damageWords(car)}
							</li>
						))}
					</ul>
					<p>{remedyWords(copied, missing, lost)}</p>
					{copied ? (
						<button type="button" class="button main" disabled={busy} onClick={bringBack}>
							{lost === 0 ? "Bring everything back" : "Bring back what there is"}
						</button>
					) : null}
					{(!copied || lost > 0) && <BackupOpener label="Open a backup" />}
					{!copied && (
						<button type="button" class="button wide" disabled={busy} onClick={bringBack}>
							Go on without it
						</button>
					)}
				</Fragment>
			) : (
				<Fragment key="told">
					<p>The phone’s storage has lost something that was saved. Until it is back, the numbers may be wrong.</p>
					<button type="button" class="button main" onClick={() => setLooking(true)}>
						See what is missing
					</button>
				</Fragment>
			)}
		</section>
	);
}

function NewerNotice({ count }: { readonly count: number }) {
	const title = "Update the app";
	return (
		<section class="card" role="alert" aria-label={title}>
			<h2>{title}</h2>
			<p>
				A newer version of the app wrote {count === 1 ? "an entry" : `${count} entries`} that this one can’t read.
				Nothing is lost, but until the app is updated {count === 1 ? "it does" : "they do"} not count, and the numbers
				may be wrong.
			</p>
			<button type="button" class="button wide" onClick={() => location.reload()}>
				Reload the app
			</button>
		</section>
	);
}

function ClockNotice({ newest, now }: { readonly newest: string; readonly now: number }) {
	const title = "Is the phone’s clock right?";
	return (
		<section class="card" role="alert" aria-label={title}>
			<h2>{title}</h2>
			<p>
				It says {dateTime(new Date(now).toISOString())}, but the newest entry is dated {dateTime(newest)}. Entries count
				in the order of their times: what is saved now comes before that one. Set the clock right, or take that entry
				back and enter it with its true time.
			</p>
			<a class="button wide" href="#/log">
				See the log
			</a>
		</section>
	);
}
