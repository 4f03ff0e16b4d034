/** Why a file was not taken: codes and facts, for words that a person can act on. */
import type * as z from "zod/mini";
import type { Result } from "../domain/result";
import { err, ok } from "../domain/result";
import type { Must } from "./must";
import type { ScanFault } from "./scanJson";

export interface LogError {
	/** Not a log at all; written by a newer version of the app; or a log with something wrong in it. */
	readonly kind: "notALog" | "newer" | "bad";
	readonly where: Where;
	readonly fault: LogFault;
}

/** In the text, from 1; or a field as a person finds it: `events[3] (id "x") litres`; or the file itself. */
export type Where = { readonly line: number; readonly column: number } | { readonly path: string } | "file";

export type LogFault =
	| ScanFault
	| {
			readonly code: "must";
			readonly must: Must;
			/** What is there instead; null: nothing. */
			readonly got: Shown | null;
			/** Of what must be its own: where the other one stands. */
			readonly earlier?: string;
	  }
	| { readonly code: "tooLong" | "empty" | "newer" }
	/** How the file begins instead of like a log. */
	| { readonly code: "begins"; readonly got: string }
	| { readonly code: "tooManyEvents"; readonly count: number };

/** A value in one short line, safe to print; of what is long only what it is. */
export type Shown = string | { readonly a: "list" | "object" };

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
	const { path, must } = firstFault(parsed.error.issues, part);
	return err(badAt(root, [...base, ...path], must));
}

/** The error at a path of the raw file, with the value that is there. */
export function badAt(root: unknown, path: Path, must: Must, earlier?: string): LogError {
	const value = valueAt(root, path);
	const fault = { code: "must", must, got: value === undefined ? null : shown(value) } as const;
	return {
		kind: "bad",
		where: { path: placeOf(root, path) },
		fault: earlier === undefined ? fault : { ...fault, earlier },
	};
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
		place = `${place.trimEnd()}[${step}]${typeof id === "string" ? ` (id ${shownText(id)}) ` : ""}`;
	}
	return place.trimEnd();
}

function shown(value: unknown): Shown {
	if (Array.isArray(value) && value.length > 2) return { a: "list" };
	if (typeof value === "object" && value !== null && !Array.isArray(value)) return { a: "object" };
	return shownText(value);
}

/** Text in quotes, a number, a short list: in one short line, safe to print. */
export function shownText(value: unknown): string {
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
function firstFault(issues: readonly Issue[], part: unknown): { path: Path; must: Must } {
	const [issue] = issues;
	if (issue.code === "invalid_union") {
		const inner = valueAt(part, issue.path);
		for (const branch of issue.errors) {
			const [first] = branch;
			if (first.path.length > 0 && valueAt(inner, first.path) !== undefined)
				return { path: [...issue.path, ...first.path], must: mustOf(first) };
		}
	}
	if (issue.code === "invalid_type" && issue.expected === "number" && typeof valueAt(part, issue.path) === "string")
		return { path: issue.path, must: "unquoted" };
	return { path: issue.path, must: mustOf(issue) };
}

/** All that a schema of `wire.ts` says of a fault is such a code. */
function mustOf({ message }: Issue): Must {
	return message as Must;
}

function valueAt(root: unknown, path: Path): unknown {
	let value = root;
	for (const step of path) {
		if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
		value = (value as Record<PropertyKey, unknown>)[step];
	}
	return value;
}
