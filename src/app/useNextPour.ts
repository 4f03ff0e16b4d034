/** On to the next product of a plan, reckoned anew from what was really poured. */
import { useRef, useState } from "preact/hooks";
import type { VolumeUnit } from "../domain/units";
import type { Car } from "../domain/vehicle";
import { isoWithOffset, useApp } from "./app";
import { type FillDraft, fillsOf, visitOf } from "./fillDraft";
import { type Guided, restAsk, restOf, withRest } from "./fillPlan";
import { inTime } from "./inTime";
import { momentAfter } from "./moment";

/** A driver with the nozzle in hand does not wait longer: the plan then stands as it was made. */
const answerWithinMs = 4_000;

interface NextPour {
	readonly car: Car;
	readonly unit: VolumeUnit;
	/** The form as it stands; null until it is read. */
	readonly draft: FillDraft | null;
	readonly change: (draft: FillDraft) => Promise<void>;
}

export function useNextPour({ car, unit, draft, change }: NextPour) {
	const { model, now } = useApp();
	const [asking, setAsking] = useState(false);
	const busy = useRef(false);
	const latest = useRef(draft);
	latest.current = draft;

	/** True once the next product is on the screen; false where nothing more is to be poured, or the form was changed meanwhile. */
	async function next(guided: Guided): Promise<boolean> {
		if (!draft || busy.current) return false;
		busy.current = true;
		setAsking(true);
		const moment = momentAfter(model.state().events ?? [], now());
		const poured = fillsOf(draft, car.tank, unit, moment);
		const ask = restAsk(guided, poured, draft.instead, visitOf(draft, isoWithOffset(moment)));
		const rest = "kind" in ask ? ask : restOf(await inTime(model.plan(car.id, ask), answerWithinMs), ask.handling);
		busy.current = false;
		setAsking(false);
		// What was typed meanwhile is not what was asked about.
		if (JSON.stringify(latest.current) !== JSON.stringify(draft)) return false;
		await change(withRest(draft, guided, rest));
		return rest.kind !== "none";
	}

	return { asking, next };
}
