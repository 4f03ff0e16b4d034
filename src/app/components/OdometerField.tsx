import type { VolumeUnit } from "../../domain/units";
import { date, distanceUnit } from "../format";
import { readOdometer, typedOdometer } from "../stopDetails";
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
	const read = readOdometer(typed, unit);
	const back = read.ok && read.value !== null && last !== null && read.value < last.km - 0.5;
	return (
		<div class="field">
			<NumberField
				label={`Odometer, ${distanceUnit(unit)}`}
				hint={last ? `On ${date(last.at)} it stood at ${typedOdometer(last.km, unit, 0)}.` : undefined}
				value={typed}
				fault={read.ok ? null : read.error}
				onInput={onInput}
			/>
			{back && (
				<p role="status">
					<strong>Less than the last time:</strong> check both. It can be saved all the same.
				</p>
			)}
		</div>
	);
}
