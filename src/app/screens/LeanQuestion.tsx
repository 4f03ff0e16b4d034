import type { VolumeUnit } from "../../domain/units";
import { warningsFor } from "../../domain/warnings";
import type { Preview } from "../../keeper/view";
import { Dialog } from "../components/Dialog";
import { WarningCard } from "../components/WarningCard";
import { mendWords } from "../mendWords";

interface LeanQuestionProps {
	readonly preview: Preview;
	readonly unit: VolumeUnit;
	readonly onBack: () => void;
	readonly onSave: () => void;
}

/** Asked before a stop is saved that takes the car past its lean limit: what it risks, and what would mend it. */
export function LeanQuestion({ preview, unit, onBack, onSave }: LeanQuestionProps) {
	const { estimate, calibration } = preview;
	const lean = warningsFor(estimate, calibration, null).find(({ code }) => code === "lean");
	return (
		<Dialog title="This goes past the lean limit" onClose={onBack}>
			{lean && (
				<WarningCard warning={lean} calibrationName={calibration?.name ?? ""} mend={mendWords(preview.mend, unit)} />
			)}
			<p>If it is not pumped yet, stop here. If it is in the tank already, save it: the account has to know.</p>
			<div class="answers">
				<button
					type="button"
					class="button main"
					onClick={onBack}
					ref={(button) => button?.focus({ preventScroll: true })}
				>
					Go back
				</button>
				<button type="button" class="button wide strong" onClick={onSave}>
					Save it, it is in the tank
				</button>
			</div>
		</Dialog>
	);
}
