/** What a field of a log must be, as a code: what is said of it stands with the words of the app. */
export type Must = Field | Reference;

type Field =
	| "text"
	| "wellFormed"
	| "tame"
	| "fraction"
	| "budget"
	| "levelSd"
	| "sd"
	| "volume"
	| "odometer"
	| "price"
	| "contents"
	| "contentsInOrder"
	| "windowInOrder"
	| "time"
	| "realDay"
	| "product"
	| "calibration"
	| "injectorCount"
	| "spreads"
	| "fuelSystem"
	| "currency"
	| "car"
	| "tank"
	| "changed"
	| "calibrations"
	| "fewCalibrations"
	| "startContents"
	| "leftOut"
	| "yesOrNo"
	| "readingOf"
	| "trim"
	| "baselineSd"
	| "kind"
	| "event"
	| "unquoted"
	| "format"
	| "version"
	| "events"
	| "report"
	| keyof typeof mostOf;

/** What must hold between the parts of a log. */
type Reference = "knownCalibration" | "otherEvent" | "knownEvent" | "own";

/** Most that a number of the fuel-system card may be: limits that no car comes near. */
export const mostOf = {
	injectorFlow: 100_000,
	pressure: 1_000_000,
	dutyLimit: 1,
	pumpFlow: 100_000,
	power: 100_000,
	consumption: 10_000,
	trimAuthority: 1,
	lambda: 10,
	spread: 1,
} as const;

/** No instrument is finer than a millionth. */
export const finest = 1e-6;
