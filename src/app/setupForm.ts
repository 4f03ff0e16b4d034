/** A car as it is being set up, and what its log begins with. */
import { catalogue } from "../domain/catalogue";
import { unknownContents } from "../domain/estimator/constants";
import type { Contents, LogEvent } from "../domain/event";
import { contentRange, fraction } from "../domain/quantity";
import { err, ok, type Result } from "../domain/result";
import type { VolumeUnit } from "../domain/units";
import type { Calibration, Car } from "../domain/vehicle";
import { isoWithOffset } from "./app";
import { type CalibrationFaults, type CalibrationForm, emptyCalibration, readCalibration } from "./calibrationForm";
import { exactPercent } from "./format";
import { readPercent, readPoints } from "./numberWords";
import { readTank, type TankForm } from "./tankForm";
import { typedNumber } from "./typedNumber";
import { numbersWords } from "./words/numbers";
import { setupWords } from "./words/setup";

/** A fuel by its id in the catalogue, or another way to say what is in the tank: `limits`, `measured`, `unknown`. */
export type ContentsChoice = string;

export interface SetupForm extends TankForm {
	/** Stays through failures, so that a second try makes no second car. */
	readonly carId: string;
	readonly name: string;
	readonly contents: ContentsChoice;
	readonly low: string;
	readonly high: string;
	readonly measured: string;
	readonly measuredSd: string;
	readonly gauge: number | null;
	readonly hasCalibration: "yes" | "no";
	readonly calibration: CalibrationForm;
	/** What a card says, in place of what is typed. */
	readonly card?: Calibration | undefined;
}

export type SetupFaults = Partial<Record<"capacity" | "low" | "high" | "measured" | "measuredSd", string>> & {
	readonly calibration?: CalibrationFaults;
};

export function emptySetup(carId: string, unit: VolumeUnit): SetupForm {
	return {
		carId,
		name: "",
		capacity: "",
		unit,
		capacityUnknown: false,
		contents: "unknown",
		low: "",
		high: "",
		measured: "",
		measuredSd: "",
		gauge: null,
		hasCalibration: "yes",
		calibration: emptyCalibration,
	};
}

/** The form with where the contents are known from; a measured one is proposed the spread of a plain analyser. */
export function withContents(form: SetupForm, contents: ContentsChoice): SetupForm {
	const measuredSd = contents === "measured" && form.measuredSd === "" ? typedNumber(2.5) : form.measuredSd;
	return { ...form, contents, measuredSd };
}

/** A stored draft, if that is what it is. */
export function readSetup(raw: unknown, empty: SetupForm): SetupForm | null {
	const draft = raw as Partial<SetupForm> | null | undefined;
	return typeof draft?.carId === "string" ? { ...empty, ...draft } : null;
}

/** The car and the first events of its log, or what is wrong beside which field. */
export function readNewCar(
	form: SetupForm,
	newId: () => string,
	now: number,
): Result<{ readonly car: Car; readonly events: readonly LogEvent[] }, SetupFaults> {
	const tank = readTank(form, null);
	const contents = readContents(form);
	const typed = form.hasCalibration === "yes" && !form.card;
	const calibration = typed ? readCalibration(form.calibration) : ok(null);
	if (!tank.ok || !contents.ok || !calibration.ok) {
		return err({
			...(tank.ok ? {} : { capacity: tank.error }),
			...(contents.ok ? {} : contents.error),
			...(calibration.ok ? {} : { calibration: calibration.error }),
		});
	}
	const calibrations = form.card ? [form.card] : calibration.value ? [{ id: newId(), ...calibration.value }] : [];
	const flashes = calibrations.map(
		({ id }): LogEvent => ({ kind: "calibration", id: newId(), at: isoWithOffset(now - 1000), calibration: id }),
	);
	const start: LogEvent = {
		kind: "start",
		id: newId(),
		at: isoWithOffset(now),
		contents: contents.value,
		...(form.gauge === null ? {} : { gauge: fraction(form.gauge) }),
	};
	return ok({
		car: { id: form.carId, name: form.name.trim() || setupWords().unnamed, tank: tank.value, calibrations },
		events: [...flashes, start],
	});
}

function readContents(form: SetupForm): Result<Contents, SetupFaults> {
	switch (form.contents) {
		case "unknown":
			return ok({ range: contentRange(...unknownContents) });
		case "limits":
			return readLimits(form);
		case "measured":
			return readMeasured(form);
		default: {
			const fuel = catalogue.find(({ id }) => id === form.contents);
			if (!fuel) throw new RangeError(`fuel must be in the catalogue, got ${form.contents}`);
			return ok({ range: fuel.range });
		}
	}
}

function readLimits(form: SetupForm): Result<Contents, SetupFaults> {
	const low = readPercent(form.low, "25");
	const high = readPercent(form.high, "35");
	if (!low.ok || !high.ok) {
		return err({ ...(low.ok ? {} : { low: low.error }), ...(high.ok ? {} : { high: high.error }) });
	}
	if (low.value > high.value) {
		return err({ high: numbersWords().swapped(exactPercent(low.value)) });
	}
	return ok({ range: contentRange(low.value, high.value) });
}

function readMeasured(form: SetupForm): Result<Contents, SetupFaults> {
	const measured = readPercent(form.measured, "30");
	const sd = readPoints(form.measuredSd);
	if (!measured.ok || !sd.ok) {
		return err({ ...(measured.ok ? {} : { measured: measured.error }), ...(sd.ok ? {} : { measuredSd: sd.error }) });
	}
	return ok({ value: fraction(measured.value), sd: sd.value / 100 });
}
