/** Why a file was not taken, in words a person can act on. */
import type * as z from "zod/mini";
import type { Result } from "../domain/result";
import { err, ok } from "../domain/result";

export interface LogError {
	/** Not a log at all; written by a newer version of the app; or a log with something wrong in it. */
	readonly kind: "notALog" | "newer" | "bad";
	/** The place as a person finds it: `line 12, column 5`, or `events[3] (id "x") litres`. */
	readonly where: string;
	/** What is wrong and how to mend it, one line. */
	readonly message: string;
}

/** One line: the place and what is wrong there. */
export function describeLogError({ where, message }: LogError): string {
	return `${where}: ${message}`;
}

export type Path = readonly PropertyKey[];

/** Checks a part of a file, which lies at `base` in the whole. */
export function check<T>(
	schema: z.ZodMiniType<T, unknown>,
	part: unknown,
	base: Path,
	root: unknown,
): Result<T, LogError> {
	const parsed = schema.safeParse(part);
	if (parsed.success) return ok(parsed.data);
	const { path, message } = firstFault(parsed.error.issues, part);
	return err(badAt(root, [...base, ...path], message));
}

/** The error at a path of the raw file, with the value that is there. */
export function badAt(root: unknown, path: Path, message: string): LogError {
	const value = valueAt(root, path);
	const full = value === undefined ? `is missing: it ${message}` : `${message}, got ${shown(value)}`;
	return { kind: "bad", where: placeOf(root, path), message: full };
}

/** `events[3] (id "x") product.range[0]`; ids only where the file has them. */
export function placeOf(root: unknown, path: Path): string {
	let place = "";
	let value = root;
	for (const step of path) {
		value = valueAt(value, [step]);
		if (typeof step !== "number") {
			place += place === "" || place.endsWith(" ") ? String(step) : `.${String(step)}`;
			continue;
		}
		const id = valueAt(value, ["id"]);
		place = `${place.trimEnd()}[${step}]${typeof id === "string" ? ` (id ${shown(id)}) ` : ""}`;
	}
	return place.trimEnd();
}

/** A value in one short line, safe to print. */
export function shown(value: unknown): string {
	if (Array.isArray(value) && value.length > 2) return "a list";
	if (typeof value === "object" && value !== null && !Array.isArray(value)) return "an object";
	const text = typeof value === "number" ? String(value) : (JSON.stringify(value) ?? String(value));
	return printable(text.length > 40 ? `${text.slice(0, 39)}…` : text);
}

/** The text on one line, with nothing in it that a terminal obeys. */
export function printable(text: string): string {
	return text.replace(/[\p{Control}\p{Format}\p{Surrogate}\p{Zl}\p{Zp}]/gu, escaped);
}

function escaped(character: string): string {
	return `\\u${(character.codePointAt(0) ?? 0).toString(16).padStart(4, "0")}`;
}

type Issue = z.core.$ZodIssue;

/** Of a union, the fault in the form that was meant: the first one that begins with what is there. */
function firstFault(issues: readonly Issue[], part: unknown): { path: Path; message: string } {
	const [issue] = issues;
	if (issue.code === "invalid_union") {
		const inner = valueAt(part, issue.path);
		for (const branch of issue.errors) {
			const [first] = branch;
			if (first.path.length > 0 && valueAt(inner, first.path) !== undefined)
				return { path: [...issue.path, ...first.path], message: first.message };
		}
	}
	if (issue.code === "invalid_type" && issue.expected === "number" && typeof valueAt(part, issue.path) === "string")
		return { path: issue.path, message: "must be a number without quotes" };
	return issue;
}

function valueAt(root: unknown, path: Path): unknown {
	let value = root;
	for (const step of path) {
		if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
		value = (value as Record<PropertyKey, unknown>)[step];
	}
	return value;
}
