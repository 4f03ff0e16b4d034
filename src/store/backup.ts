/** The log as a file: all of it or nothing. */
import { compareEvents, type LogEvent } from "../domain/event";
import { err, ok, type Result } from "../domain/result";
import { longestFile, longestFileWords, mostEvents } from "./limits";
import { badAt, check, type LogError, shown } from "./logError";
import { referenceError } from "./references";
import { scanJson } from "./scanJson";
import { carSchema, eventSchema, format, type Log, version } from "./wire";

export { describeLogError, type LogError } from "./logError";
export type { Log } from "./wire";

/** Reads a log file; never throws. */
export function parseLog(text: string): Result<Log, LogError> {
	if (text.length > longestFile)
		return notALog("the file", `is over ${longestFileWords}, which no log is: choose a file that Heeltap saved`);
	const body = text.startsWith("\uFEFF") ? text.slice(1) : text;
	const first = /[^ \n\r\t]/.exec(body);
	if (!first) return notALog("the file", "is empty: choose a file that Heeltap saved");
	if (first[0] !== "{")
		return notALog(
			lineOf(body, first.index),
			`a log begins with {, got ${shown(first[0])}: choose a file that Heeltap saved`,
		);
	const fault = scanJson(body);
	if (fault)
		return err({ kind: fault.refused ? "bad" : "notALog", where: lineOf(body, fault.at), message: fault.message });
	return readEnvelope(JSON.parse(body) as Record<string, unknown>);
}

/** Writes a log file. The same log gives the same text, whatever the order of its events and fields. */
export function formatLog({ car, events }: Log): string {
	const file = { format, version, car, events: [...events].sort(compareEvents) };
	return `${JSON.stringify(canonical(file), null, 2)}\n`;
}

function readEnvelope(file: Record<string, unknown>): Result<Log, LogError> {
	if (file.format !== format) {
		const { where, message } = badAt(file, ["format"], `must be ${shown(format)}`);
		return notALog(where, `${message}: choose a file that Heeltap saved`);
	}
	if (typeof file.version !== "number" || !Number.isInteger(file.version) || file.version < 1)
		return err(badAt(file, ["version"], `must be a whole number from 1, such as ${version}`));
	if (file.version > version)
		return err({ kind: "newer", where: "version", message: "made by a newer version of the app: update the app" });
	const car = check(carSchema, file.car, ["car"], file);
	if (!car.ok) return car;
	const events = readEvents(file);
	if (!events.ok) return events;
	const log = { car: car.value, events: events.value };
	const fault = referenceError(log, file);
	return fault ? err(fault) : ok(log);
}

function readEvents(file: Record<string, unknown>): Result<LogEvent[], LogError> {
	if (!Array.isArray(file.events)) return err(badAt(file, ["events"], "must be a list of events, perhaps empty: []"));
	if (file.events.length > mostEvents)
		return err({ kind: "bad", where: "events", message: `must be at most ${mostEvents}, got ${file.events.length}` });
	const events: LogEvent[] = [];
	for (const [i, raw] of file.events.entries()) {
		const event = check(eventSchema, raw, ["events", i], file);
		if (!event.ok) return event;
		events.push(event.value);
	}
	return ok(events);
}

function notALog(where: string, message: string): Result<never, LogError> {
	return err({ kind: "notALog", where, message });
}

function lineOf(text: string, at: number): string {
	let [line, begin] = [1, 0];
	for (let end = text.indexOf("\n"); end >= 0 && end < at; end = text.indexOf("\n", begin)) {
		line++;
		begin = end + 1;
	}
	return `line ${line}, column ${at - begin + 1}`;
}

const leading = ["format", "version", "car", "events", "id", "name", "at", "kind"];

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
