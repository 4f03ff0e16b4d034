/** Drives as the text of a log file. */
import { type Drive, type DriveRow, driven } from "./drive";

export interface CsvStyle {
	readonly delimiter?: string;
	readonly mark?: "." | ",";
	readonly newline?: string;
	/** Lines before the header. */
	readonly before?: readonly string[];
	/** What is left out, by its header. */
	readonly without?: readonly string[];
	readonly headers?: Partial<Record<string, string>>;
}

interface CsvColumn {
	readonly header: string;
	readonly of: (row: DriveRow) => string;
}

const percent = (value: number) => (value * 100).toFixed(2);

const columns: readonly CsvColumn[] = [
	{ header: "Time (s)", of: ({ time }) => time.toFixed(2) },
	{ header: "Engine Speed (rpm)", of: ({ rpm }) => rpm.toFixed(0) },
	{ header: "Vehicle Speed (km/h)", of: ({ speed }) => speed.toFixed(1) },
	{ header: "Engine Coolant Temperature (°C)", of: ({ coolant }) => coolant.toFixed(0) },
	{ header: "Throttle Position (%)", of: ({ throttle }) => percent(throttle) },
	{ header: "Calculated Load (%)", of: ({ load }) => percent(load) },
	{ header: "Intake Manifold Pressure (kPa)", of: ({ manifold }) => manifold.toFixed(0) },
	{ header: "Short Term Fuel Trim Bank 1 (%)", of: ({ short }) => percent(short[0]) },
	{ header: "Long Term Fuel Trim Bank 1 (%)", of: ({ long }) => percent(long[0]) },
	{ header: "Short Term Fuel Trim Bank 2 (%)", of: ({ short }) => percent(short[1] ?? short[0]) },
	{ header: "Long Term Fuel Trim Bank 2 (%)", of: ({ long }) => percent(long[1] ?? long[0]) },
	{ header: "Lambda measured", of: ({ lambda }) => lambda.toFixed(3) },
	{ header: "Lambda commanded", of: ({ commanded }) => commanded.toFixed(3) },
	{ header: "Ethanol Fuel (%)", of: ({ ethanol }) => percent(ethanol) },
];

/** What a log of one bank holds and no more. */
export const plainColumns = ["Short Term Fuel Trim Bank 2 (%)", "Long Term Fuel Trim Bank 2 (%)", "Ethanol Fuel (%)"];

/** Lines with their line ends: a long log need not be held as a whole. */
export function* csvLines(drive: Drive, style: CsvStyle = {}): Generator<string> {
	const { delimiter = ",", mark = ".", newline = "\n", before = [], without = plainColumns, headers = {} } = style;
	const kept = columns.filter(({ header }) => !without.includes(header));
	for (const line of before) yield line + newline;
	yield kept.map(({ header }) => headers[header] ?? header).join(delimiter) + newline;
	for (const row of driven(drive)) {
		const fields = kept.map(({ of }) => of(row));
		yield (mark === "," ? fields.map((field) => field.replace(".", ",")) : fields).join(delimiter) + newline;
	}
}

export function csvOf(drive: Drive, style?: CsvStyle): string {
	return [...csvLines(drive, style)].join("");
}
