import type { Pairing } from "../../../share/liveCode";
import { useAppState } from "../../app";
import { Facts } from "../../components/Facts";
import { isReachable } from "../../liveServers";
import { useBeginLive } from "../../useBeginLive";
import { useLive } from "../../useLive";
import { codesWords } from "../../words/codes";
import { handWords } from "../../words/hand";
import { liveWords } from "../../words/live";
import { BeginButton } from "./BeginButton";

/** The code of another phone as it came: nothing is kept before "Keep". */
export function Paired({ pairing }: { readonly pairing: Pairing }) {
	const { state, now } = useAppState();
	const { carId, carName, access, until } = pairing;
	const live = useLive(carId);
	const { begin, busy, fault } = useBeginLive();
	const words = liveWords();
	const here = state.cars.find(({ id }) => id === carId);
	const ended = access.ends !== null && access.ends * 1000 <= now();
	const refusal =
		ended || until * 1000 <= now()
			? words.codeEnded
			: isReachable(access.server, location)
				? null
				: words.notAllowed(access.server);
	const other = live && live.server !== access.server ? live.server : null;
	return (
		<section class="card">
			<h2>{words.paired(carName)}</h2>
			<Facts
				facts={[
					{ term: words.car, is: carName },
					{ term: words.server, is: access.server },
				]}
			/>
			{refusal !== null ? (
				<p class="fault" role="alert">
					{codesWords().unchanged(refusal)}
				</p>
			) : (
				<>
					<p>{words.pairedMore}</p>
					<p>{here ? words.joins : handWords().carIsNew}</p>
					{other && <p>{words.replaces(other)}</p>}
					<BeginButton
						label={words.keep}
						disabled={busy || live === undefined}
						fault={fault}
						onBegin={() => begin({ do: "join", pairing }, carName)}
					/>
				</>
			)}
			<a class="button wide" href={state.car ? "#/tank" : "#/setup"}>
				{handWords().leave}
			</a>
		</section>
	);
}
