import { useState } from "preact/hooks";
import type { Calibration, Car } from "../../../domain/vehicle";
import { useApp } from "../../app";
import {
	calibrationDraftKey,
	emptyCalibrationDraft,
	readCalibrationDraft,
	withProposedEdge,
} from "../../calibrationDraft";
import { exactPercent } from "../../format";
import { printRoute } from "../../route";
import { fuelSystemWords } from "../../words/fuelSystem";

interface ProposeEdgeProps {
	readonly car: Car;
	/** The one in force; null: a new one. */
	readonly calibration: Calibration | null;
	/** In full tenths of a percent. */
	readonly content: number;
}

/** Leads to the calibration's form with the edge in it. Nothing is saved but the half-typed form. */
export function ProposeEdge({ car, calibration, content }: ProposeEdgeProps) {
	const words = fuelSystemWords();
	const { model } = useApp();
	const [asking, setAsking] = useState(false);
	const key = calibrationDraftKey(car.id);

	async function propose(overwriting: boolean): Promise<void> {
		const raw = await model.draft(key);
		const typed = readCalibrationDraft(raw, calibration);
		// What is half-typed for another calibration would be lost.
		if (raw && !typed && !overwriting) return setAsking(true);
		const draft = typed ?? emptyCalibrationDraft(model.newId(), calibration, car.calibrations.length === 0);
		const saved = await model.saveDraft(key, withProposedEdge(draft, content));
		if (saved !== null) location.hash = printRoute({ screen: "calibration", id: calibration?.id ?? null });
	}

	return (
		<>
			{asking && (
				<p class="fault" role="alert">
					{words.halfTyped}
				</p>
			)}
			<button type="button" class="button wide" onClick={() => propose(asking)}>
				{asking ? words.goOn : words.useEdge(exactPercent(content))}
			</button>
			<p class="small soft">{words.opens}</p>
		</>
	);
}
