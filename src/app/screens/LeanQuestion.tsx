import type { VolumeUnit } from "../../domain/units";
import { warningsFor } from "../../domain/warnings";
import type { Preview } from "../../keeper/view";
import { Dialog } from "../components/Dialog";
import { WarningCard } from "../components/WarningCard";
import { mendWords } from "../mendWords";
import { fillWords } from "../words/fill";

interface LeanQuestionProps {
	readonly preview: Preview;
	readonly unit: VolumeUnit;
	readonly onBack: () => void;
	readonly onSave: () => void;
}

/** Asked before a stop is saved that takes the car past its lean limit: what it risks, and what would mend it. */
export function LeanQuestion({ preview, unit, onBack, onSave }: LeanQuestionProps) {
	const { estimate, calibration } = preview;
	const words = fillWords();
	const lean = warningsFor(estimate, calibration, null).find(({ code }) => code === "lean");
	return (
		<Dialog title={words.leanTitle} onClose={onBack}>
			{lean && (
				<WarningCard warning={lean} calibrationName={calibration?.name ?? ""} mend={mendWords(preview.mend, unit)} />
			)}
			<p>{words.leanQuestion}</p>
			<div class="answers">
				<button type="button" class="button main" onClick={onBack}>
					{words.goBack}
				</button>
				<button type="button" class="button wide strong" onClick={onSave}>
					{words.saveAnyway}
				</button>
			</div>
		</Dialog>
	);
}
