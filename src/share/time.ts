/** Times as a log has them, `2026-06-01T17:30:00+02:00`, in six or seven bytes. */
import { MangledError, type Reader, type Writer } from "./bytes";

/** Written as this: seconds since 2020, thousandths if there are any, and the offset in minutes; null is Z. */
export interface Time {
	readonly seconds: number;
	readonly thousandths: number | null;
	readonly offset: number | null;
}

const since = Date.UTC(2020, 0, 1) / 1000;
const pattern = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(?:\.(\d{3}))?(?:Z|([+-])(\d\d):(\d\d))$/;

/** Null where the text is no time, or one that would come back otherwise. */
export function timeIn(text: string): Time | null {
	const found = pattern.exec(text);
	if (!found) return null;
	const [, thousandths, sign, hours, minutes] = found;
	const seconds = Math.floor(Date.parse(text) / 1000) - since;
	const time: Time = {
		seconds,
		thousandths: thousandths === undefined ? null : Number(thousandths),
		offset: sign === undefined ? null : (sign === "-" ? -1 : 1) * (Number(hours) * 60 + Number(minutes)),
	};
	return Number.isFinite(seconds) && textOf(time) === text ? time : null;
}

function textOf({ seconds, thousandths, offset }: Time): string {
	const instant = (seconds + since + (offset ?? 0) * 60) * 1000;
	// Years beyond four digits are written otherwise.
	if (!(instant >= 0 && instant < 253_402_300_800_000)) return "";
	const two = (value: number) => String(value).padStart(2, "0");
	const rest = thousandths === null ? "" : `.${String(thousandths).padStart(3, "0")}`;
	const away = Math.abs(offset ?? 0);
	const zone = offset === null ? "Z" : `${offset < 0 ? "-" : "+"}${two(Math.floor(away / 60))}:${two(away % 60)}`;
	return `${new Date(instant).toISOString().slice(0, 19)}${rest}${zone}`;
}

/** Offsets in steps from 0: Z, then +0, −1, +1, −2 … minutes; thousandths and the sign of the seconds in one byte before. */
export function writeTime(out: Writer, { seconds, thousandths, offset }: Time): Writer {
	out.byte((thousandths === null ? 0 : 1) + (seconds < 0 ? 2 : 0));
	out.count(Math.abs(seconds));
	if (thousandths !== null) out.count(thousandths);
	return out.count(offset === null ? 0 : 1 + (offset < 0 ? -2 * offset - 1 : 2 * offset));
}

/** Throws a MangledError where no time is. */
export function readTime(from: Reader): string {
	const form = from.byte();
	const seconds = from.count() * (form & 2 ? -1 : 1);
	const thousandths = form & 1 ? from.count() : null;
	const step = from.count() - 1;
	const offset = step < 0 ? null : step % 2 ? -(step + 1) / 2 : step / 2;
	const text =
		form > 3 || (thousandths ?? 0) > 999 || Math.abs(offset ?? 0) >= 1440
			? ""
			: textOf({ seconds, thousandths, offset });
	if (text === "") throw new MangledError("this is no time");
	return text;
}
