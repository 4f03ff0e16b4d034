/** Log files with one thing broken, and what must be said of them. */
import { expect } from "vitest";
import { type LogError, parseLog } from "../../src/store/backup";
import { aLog } from "./logs";
import { placeOf, saidOf } from "./sentences";

// biome-ignore lint/suspicious/noExplicitAny: a test breaks whatever it likes in the file
type Json = Record<string, any>;

/** What is broken, how, the place that is to be named, and a part of the message. */
export type Broken = [name: string, mutate: (file: Json) => unknown, where: string, message: string];

/** The file of one of every kind, broken. */
export function broken(mutate: (file: Json) => unknown): string {
	const file = JSON.parse(JSON.stringify({ format: "heeltap-log", version: 1, ...aLog() }));
	mutate(file);
	return JSON.stringify(file);
}

export function errorOf(text: string): LogError {
	const result = parseLog(text);
	if (result.ok) throw new Error("the file was taken");
	return result.error;
}

export function expectError(text: string, kind: string, where: string, message: string): void {
	const error = errorOf(text);
	expect(error.kind).toBe(kind);
	expect(placeOf(error)).toBe(where);
	const said = saidOf(error);
	expect(said.slice(where.length)).toContain(message);
	expect(said).not.toMatch(/[\n\r]/);
}
