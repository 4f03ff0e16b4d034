import type { Access } from "../../../share/liveCode";
import { useAppState } from "../../app";
import { Choice } from "../../components/Choice";
import { Facts } from "../../components/Facts";
import { date } from "../../format";
import { isReachable } from "../../liveServers";
import { useBeginLive } from "../../useBeginLive";
import { useLive } from "../../useLive";
import { codesWords } from "../../words/codes";
import { liveWords } from "../../words/live";
import { BeginButton } from "./BeginButton";

/** An invitation as it came: nothing happens before "Switch on". */
export function Invited({ access }: { readonly access: Access }) {
	const { state, model, now } = useAppState();
	const { car, cars } = state;
	const live = useLive(car?.id ?? null);
	const { begin, busy, fault } = useBeginLive();
	const words = liveWords();
	const ends = access.ends === null ? null : date(new Date(access.ends * 1000).toISOString());
	const over = access.ends !== null && access.ends * 1000 <= now();
	const refusal = over
		? words.ended(ends ?? "")
		: isReachable(access.server, location)
			? car
				? null
				: words.noCarYet
			: words.notAllowed(access.server);
	const facts = [
		{ term: words.server, is: access.server },
		...(ends === null ? [] : [{ term: words.goodUntil, is: ends }]),
	];
	return (
		<section class="card">
			<h2>{words.invited}</h2>
			<Facts facts={facts} />
			{refusal !== null ? (
				<p class="fault" role="alert">
					{codesWords().unchanged(refusal)}
				</p>
			) : (
				car && (
					<>
						<p>{words.invitedMore(car.name)}</p>
						{cars.length > 1 && (
							<Choice
								label={words.whichCar}
								options={cars.map(({ id, name }) => ({ value: id, label: name }))}
								value={car.id}
								onChange={(activeCar) => model.saveSettings({ activeCar })}
							/>
						)}
						{live && <p>{words.replaces(live.server)}</p>}
						<BeginButton
							label={words.switchOn}
							disabled={busy || live === undefined}
							fault={fault}
							onBegin={() => begin({ do: "on", carId: car.id, access }, car.name)}
						/>
					</>
				)
			)}
			<a class="button wide" href={car ? "#/tank" : "#/setup"}>
				{words.leave}
			</a>
		</section>
	);
}
