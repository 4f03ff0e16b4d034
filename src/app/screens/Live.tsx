import { readLiveCode } from "../../share/liveCode";
import { useAppState } from "../app";
import { Unreadable } from "../components/Unreadable";
import { useLive } from "../useLive";
import { liveWords } from "../words/live";
import { Invited } from "./live/Invited";
import { LiveCard } from "./live/LiveCard";
import { Paired } from "./live/Paired";

/** A car's replication; with an id, what an invitation or another phone's code would begin. */
export function LiveScreen({ id }: { readonly id: string | null }) {
	if (id === null) return <LiveNow />;
	const code = readLiveCode(id);
	if (!code.ok) return <Unreadable why={code.error} />;
	return code.value.what === "invitation" ? (
		<Invited access={code.value.access} />
	) : (
		<Paired pairing={code.value.pairing} />
	);
}

function LiveNow() {
	const { car, settings } = useAppState().state;
	// One that was paired may still be on its way.
	const carId = settings.activeCar ?? car?.id ?? null;
	const live = useLive(carId);
	const words = liveWords();
	if (live === undefined) {
		return (
			<p class="soft late" role="status">
				{words.reading}
			</p>
		);
	}
	if (live) return <LiveCard car={car?.id === carId ? car : null} live={live} />;
	return (
		<section class="card">
			<h2>{words.title}</h2>
			{car && (
				<p role="status">
					<strong>{words.off(car.name)}</strong>
				</p>
			)}
			<p>{words.about}</p>
			<p>{car ? words.need : words.noCar}</p>
			<a class="button main" href="#/take">
				{words.toScan}
			</a>
			<a class="button wide" href={car ? "#/car" : "#/setup"}>
				{words.back}
			</a>
		</section>
	);
}
