import { useEffect, useMemo, useState } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import type { Car } from "../../domain/vehicle";
import { type Holdings, readHoldings, settingsDigest } from "../../share/holdings";
import { holdingsAfter, type Part, packedPart, partOf, type Wanted } from "../../share/part";
import { codeBytes, linkBytes, linksOf, mostCodes } from "../../share/sequence";
import { isoWithOffset, useAppState } from "../app";
import { appAddress } from "../appAddress";
import { backupName } from "../backupFile";
import { BackupButtons } from "../components/BackupButtons";
import { Choice, type Option } from "../components/Choice";
import { CodeSequence } from "../components/CodeSequence";
import { DayField } from "../components/DayField";
import { LinkButtons } from "../components/LinkButtons";
import { Unreadable } from "../components/Unreadable";
import { ago } from "../format";
import { type Handed, useHanded } from "../useHanded";
import { cardWords } from "../words/card";
import { codesWords } from "../words/codes";
import { handWords } from "../words/hand";

/** Hands entries to another phone; with an id, what the code of that phone says that it lacks. */
export function HandScreen({ id }: { readonly id: string | null }) {
	const { car, events } = useAppState().state;
	const words = handWords();
	const holdings = id === null ? null : readHoldings(id);
	if (holdings && !holdings.ok) return <Unreadable why={holdings.error} />;
	if (!car || !events) return <p class="soft">{words.reading}</p>;
	return <HandOver key={car.id} car={car} events={events} holdings={holdings?.value ?? null} />;
}

interface HandOverProps {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	readonly holdings: Holdings | null;
}

type What = "lastStop" | "sinceLast" | "sinceDay" | "all" | "lacking";

function HandOver({ car, events, holdings }: HandOverProps) {
	const { model, state, now } = useAppState();
	const words = handWords();
	const { handed, note } = useHanded(car.id);
	const [chosen, setChosen] = useState<What | null>(null);
	const [day, setDay] = useState("");
	const elsewhere = holdings && holdings.id !== car.id;
	const other = elsewhere ? state.cars.find(({ id }) => id === holdings.id) : undefined;
	useEffect(() => {
		// The code says which car it is about.
		if (other) model.saveSettings({ activeCar: other.id });
	}, [other?.id]);
	if (elsewhere) {
		return (
			<section class="card">
				<p class="fault" role="alert">
					{other ? words.reading : codesWords().unchanged(words.otherCar)}
				</p>
				<BackToCar />
			</section>
		);
	}
	if (handed === undefined) return <p class="soft late">{words.reading}</p>;
	const what = chosen ?? (holdings ? "lacking" : handed ? "sinceLast" : "lastStop");
	const wanted = wantedOf(what, { holdings, handed, day });
	const part = wanted && partOf(car, events, wanted);
	const knew = holdings ?? handed?.holdings ?? null;
	return (
		<>
			<section class="card">
				<h2>{words.handTitle}</h2>
				<p>{words.handAbout(car.name)}</p>
				<Choice
					label={words.what}
					options={options(holdings, handed, now())}
					value={what}
					onChange={(what) => setChosen(what)}
				/>
				{what === "sinceDay" && (
					<DayField label={words.day} value={day} max={isoWithOffset(now()).slice(0, 10)} onChange={setDay} />
				)}
			</section>
			{part && (
				<HandedOver
					key={JSON.stringify(wanted)}
					part={part}
					exact={wanted.what === "lacking"}
					settings={wanted.what === "lacking" && wanted.holdings.settings !== settingsDigest(car)}
				/>
			)}
			{part && part.events.length > 0 && (
				<section class="card">
					<button
						type="button"
						class="button wide"
						onClick={() => note({ at: isoWithOffset(now()), holdings: holdingsAfter(car, events, part, knew) })}
					>
						{words.done}
					</button>
					<p class="small soft">{words.doneMore}</p>
				</section>
			)}
			{!holdings && (
				<section class="card">
					<h2>{words.knowExactly}</h2>
					<p>{words.knowExactlyMore}</p>
					<a class="button wide" href="#/take">
						{words.toScan}
					</a>
				</section>
			)}
			<section class="card">
				<p>{words.wholeFile}</p>
				<BackupButtons car={car} />
				<BackToCar />
			</section>
		</>
	);
}

function BackToCar() {
	return (
		<a class="button wide" href="#/car">
			{cardWords().back}
		</a>
	);
}

function options(holdings: Holdings | null, handed: Handed | null, now: number): Option<What>[] {
	const words = handWords();
	return [
		...(holdings ? [{ value: "lacking" as const, label: words.lacking, more: words.lackingMore }] : []),
		...(handed
			? [{ value: "sinceLast" as const, label: words.sinceLast, more: words.sinceLastMore(ago(handed.at, now)) }]
			: []),
		{ value: "lastStop", label: words.lastStop, more: words.lastStopMore },
		{ value: "sinceDay", label: words.sinceDay },
		{ value: "all", label: words.all, more: words.allMore },
	];
}

interface Given {
	readonly holdings: Holdings | null;
	readonly handed: Handed | null;
	readonly day: string;
}

function wantedOf(what: What, { holdings, handed, day }: Given): Wanted | null {
	switch (what) {
		case "lacking":
			return holdings && { what: "lacking", holdings };
		case "sinceLast":
			return handed && { what: "lacking", holdings: handed.holdings };
		case "sinceDay": {
			const instant = Date.parse(`${day}T00:00:00`);
			return Number.isFinite(instant) ? { what: "since", instant } : null;
		}
		default:
			return { what };
	}
}

interface HandedOverProps {
	readonly part: Part;
	/** It is what the other phone lacks. */
	readonly exact: boolean;
	/** The other phone has other settings. */
	readonly settings: boolean;
}

function HandedOver({ part, exact, settings }: HandedOverProps) {
	const words = handWords();
	const { car, events } = part;
	// By what it says: the log may grow while the code is shown, and drawing codes anew with every change would flicker.
	const { codes, links } = useMemo(() => {
		const body = packedPart(part);
		return { codes: linksOf(appAddress(), body, codeBytes), links: linksOf(appAddress(), body, linkBytes) };
	}, [JSON.stringify(part)]);
	if (events.length === 0 && part.car.calibrations.length === 0 && !settings) {
		return (
			<section class="card">
				<p role="status">{exact ? words.nothing : words.noEntries}</p>
			</section>
		);
	}
	if (codes.length > mostCodes) {
		return (
			<section class="card">
				<p role="status">{words.tooMany(events.length, codes.length)}</p>
			</section>
		);
	}
	const label = words.howMany(events.length, codes.length);
	return (
		<section class="card">
			<h2>{words.showOther}</h2>
			<p role="status">{label}</p>
			<CodeSequence links={codes} label={label} />
			<p class="small soft">{words.scanWhat}</p>
			{links.length > 1 && <p class="small soft">{words.longLink}</p>}
			<LinkButtons
				link={links.length === 1 ? links[0] : null}
				links={links}
				head={words.codesFileHead(car.name)}
				name={words.codesFileName(backupName(car.name, "").replace(/-$/, ""))}
			/>
		</section>
	);
}
