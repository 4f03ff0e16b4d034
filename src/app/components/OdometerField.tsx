import type { VolumeUnit } from "../../domain/units";
import { date, distanceUnit } from "../format";
import { readOdometer, typedOdometer } from "../stopDetails";
import { stopWords } from "../words/stop";
import { NumberField } from "./TextField";

interface OdometerFieldProps {
	/** As typed, in km, or in miles where fuel is counted in gallons. */
	readonly typed: string;
	/** The one before it in the log. */
	readonly last: { readonly km: number; readonly at: string } | null;
	readonly unit: VolumeUnit;
	readonly onInput: (typed: string) => void;
}

/** The odometer at a stop. One that runs backwards is pointed out; it is the driver who knows why. */
export function OdometerField({ typed, last, unit, onInput }: OdometerFieldProps) {
	const words = stopWords();
	const read = readOdometer(typed, unit);
	const back = read.ok && read.value !== null && last !== null && read.value < last.km - 0.5;
	return (
		<div class="field">
			<NumberField
				label={words.odometer(distanceUnit(unit))}
				hint={last ? words.odometerBefore(date(last.at), typedOdometer(last.km, unit, 0)) : undefined}
				value={typed}
				fault={read.ok ? null : read.error}
				onInput={onInput}
			/>
			{back && (
				<p role="status">
					<strong>{words.lessThanBefore}</strong> {words.checkBoth}
				</p>
			)}
		</div>
	);
}
