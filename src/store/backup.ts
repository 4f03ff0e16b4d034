/** The log as a file: all of it or nothing. */
import { compareEvents, type LogEvent } from "../domain/event";
import { err, ok, type Result } from "../domain/result";
import { longestFile, mostEvents } from "./limits";
import { badAt, check, type LogError, type LogFault, shownText, type Where } from "./logError";
import { referenceError } from "./references";
import type { ReportNote } from "./report";
import { scanJson } from "./scanJson";
import { carSchema, eventSchema, format, type Log, version } from "./wire";

export type { LogError } from "./logError";
export type { Log } from "./wire";

/** Reads a log file; never throws. */
export function parseLog(text: string): Result<Log, LogError> {
	const file = parseFile(text);
	return file.ok ? readEnvelope(file.value) : file;
}

/** The file as it is: an object whose text is sound, and nothing else is known of it. */
export function parseFile(text: string): Result<Record<string, unknown>, LogError> {
	if (text.length > longestFile) return notALog("file", { code: "tooLong" });
	const body = text.startsWith("\uFEFF") ? text.slice(1) : text;
	const first = /[^ \n\r\t]/.exec(body);
	if (!first) return notALog("file", { code: "empty" });
	if (first[0] !== "{") return notALog(lineOf(body, first.index), { code: "begins", got: shownText(first[0]) });
	const found = scanJson(body);
	if (found) {
		const { at, fault, refused } = found;
		return err({ kind: refused ? "bad" : "notALog", where: lineOf(body, at), fault });
	}
	return ok(JSON.parse(body) as Record<string, unknown>);
}

/** Writes a log file. The same log gives the same text, whatever the order of its events and fields. */
export function formatLog({ car, events }: Log, report?: ReportNote): string {
	const file = { format, version, ...(report && { report }), car, events: [...events].sort(compareEvents) };
	return `${JSON.stringify(canonical(file), null, 2)}\n`;
}

export function readEnvelope(file: Record<string, unknown>): Result<Log, LogError> {
	if (file.format !== format) {
		const { where, fault } = badAt(file, ["format"], "format");
		return notALog(where, fault);
	}
	if (typeof file.version !== "number" || !Number.isInteger(file.version) || file.version < 1)
		return err(badAt(file, ["version"], "version"));
	if (file.version > version) return err({ kind: "newer", where: { path: "version" }, fault: { code: "newer" } });
	const car = check(carSchema, file.car, ["car"], file);
	if (!car.ok) return car;
	const events = readEvents(file);
	if (!events.ok) return events;
	const log = { car: car.value, events: events.value };
	const fault = referenceError(log, file);
	return fault ? err(fault) : ok(log);
}

function readEvents(file: Record<string, unknown>): Result<LogEvent[], LogError> {
	if (!Array.isArray(file.events)) return err(badAt(file, ["events"], "events"));
	if (file.events.length > mostEvents)
		return err({
			kind: "bad",
			where: { path: "events" },
			fault: { code: "tooManyEvents", count: file.events.length },
		});
	const events: LogEvent[] = [];
	for (const [i, raw] of file.events.entries()) {
		const event = check(eventSchema, raw, ["events", i], file);
		if (!event.ok) return event;
		events.push(event.value);
	}
	return ok(events);
}

function notALog(where: Where, fault: LogFault): Result<never, LogError> {
	return err({ kind: "notALog", where, fault });
}

function lineOf(text: string, at: number): Where {
	let [line, begin] = [1, 0];
	for (let end = text.indexOf("\n"); end >= 0 && end < at; end = text.indexOf("\n", begin)) {
		line++;
		begin = end + 1;
	}
	return { line, column: at - begin + 1 };
}

const leading = ["format", "version", "report", "car", "events", "id", "name", "at", "kind"];

/** The same with its names in one order: those a reader looks for first, then by the alphabet. */
function canonical(value: unknown): unknown {
	if (Array.isArray(value)) return value.map(canonical);
	if (typeof value !== "object" || value === null) return value;
	const entries = Object.entries(value).map(([name, inner]) => [name, canonical(inner)] as const);
	return Object.fromEntries(entries.sort(([a], [b]) => rank(a) - rank(b) || (a < b ? -1 : 1)));
}

function rank(name: string): number {
	const place = leading.indexOf(name);
	return place < 0 ? leading.length : place;
}
