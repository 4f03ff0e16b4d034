import { describe, test } from "vitest";
import { type Broken, broken, expectError } from "../helpers/brokenLogs";

const notLogs: [name: string, text: string, where: string, message: string][] = [
	["an empty file", "", "the file", "is empty: choose a file that Heeltap saved"],
	["a file of blanks", " \n\n", "the file", "is empty"],
	[
		"a web page",
		"<!doctype html>",
		"line 1, column 1",
		'a log begins with {, got "<": choose a file that Heeltap saved',
	],
	["a list", "\n  []", "line 2, column 3", "a log begins with {"],
	["a file cut short in a list", '{"events": [', "line 1, column 13", "the file ends in the middle: it was cut short"],
	["a file cut short in a text", '{\n"a": "b', "line 2, column 8", "the file ends in the middle"],
	["a file cut short in a name", '{"a', "line 1, column 4", "the file ends in the middle"],
	[
		"a comma too many in braces",
		'{"a": 1,\n}',
		"line 1, column 8",
		"nothing follows this comma before }: remove the comma",
	],
	["a comma too many in a list", '{"a": [1, ]}', "line 1, column 9", "nothing follows this comma before ]"],
	["a missing comma", '{"a": 1\n "b": 2}', "line 2, column 2", 'expected a comma or }, got "\\""'],
	["a missing colon", '{"a" 1}', "line 1, column 6", 'expected a colon, got "1"'],
	["a missing value", '{"a": }', "line 1, column 7", 'expected a value, got "}"'],
	["single quotes", "{'a': 1}", "line 1, column 2", 'expected a name in double quotes, such as "id"'],
	["a name without quotes", "{a: 1}", "line 1, column 2", "expected a name in double quotes"],
	["a comment", '{ // mine\n"a": 1}', "line 1, column 3", "expected a name in double quotes"],
	["a number with a comma", '{"a": 1,5}', "line 1, column 9", "expected a name in double quotes"],
	["a number with a leading zero", '{"a": 01}', "line 1, column 7", "expected a value"],
	["NaN", '{"a": NaN}', "line 1, column 7", "expected a value"],
	["a text over two lines", '{"a": "b\n"}', "line 1, column 9", "a closing quote is missing"],
	["an unknown escape", '{"a": "\\x41"}', "line 1, column 8", "a backslash must be followed by"],
	["a second log behind the first", "{}{}", "line 1, column 3", "there is more after the end of the log: remove it"],
	["a picture", "{\u0000\u0001", "line 1, column 2", 'got "\\u0000"'],
	["another app's file", broken((file) => (file.format = "other")), "format", 'must be "heeltap-log", got "other"'],
	["JSON without a format", "{}", "format", 'is missing: it must be "heeltap-log": choose a file that Heeltap saved'],
];

const refused: [name: string, text: string, where: string, message: string][] = [
	[
		"a name that is there twice",
		'{"a": 1, "b": 2, "a": 3}',
		"line 1, column 18",
		'"a" is there twice: remove one of them',
	],
	["a disguised second name", '{"ab": 1, "\\u0061b": 3}', "line 1, column 11", '"ab" is there twice'],
	["__proto__", '{"__proto__": {}}', "line 1, column 2", 'the name "__proto__" is not allowed: remove it'],
	["half a character, escaped", '{"a": "\\ud83d"}', "line 1, column 7", "half a character"],
	["half a character, raw", '{"a": "\ud83d"}', "line 1, column 7", "half a character"],
	["half a character in a name", '{"\\ude00": 1}', "line 1, column 2", "half a character"],
	["deep nesting", `{"a": ${"[".repeat(40)}`, "line 1, column 38", "brackets within brackets deeper than 32"],
	[
		"a text of a book",
		`{"a": "${"x".repeat(10_001)}"}`,
		"line 1, column 7",
		"this text is longer than 10000 characters",
	],
	[
		"a crowd of fields",
		`{${Array.from({ length: 1001 }, (_, i) => `"a${i}": 1`).join(", ")}}`,
		"line 1, column 10892",
		"more than 1000 fields in one pair of braces",
	],
	[
		"a million numbers",
		`{"a": [${"1,".repeat(1e6)}1]}`,
		"line 1, column 1000004",
		"more than 500000 values: a log has not so many",
	],
	["a number beyond all", '{"a": 1e999}', "line 1, column 7", "this number is too large"],
];

const bad: Broken[] = [
	["a version that is text", (f) => (f.version = "1"), "version", 'must be a whole number from 1, such as 1, got "1"'],
	["no version", (f) => delete f.version, "version", "is missing: it must be a whole number"],
	["version 0", (f) => (f.version = 0), "version", "must be a whole number from 1"],
	["version 1.5", (f) => (f.version = 1.5), "version", "must be a whole number from 1"],
	["no car", (f) => delete f.car, "car", "is missing: it must be a car in braces"],
	["no car name", (f) => delete f.car.name, "car.name", "is missing: it must be text of 1 to 200 characters"],
	["an empty id", (f) => (f.car.id = ""), "car.id", 'must be text of 1 to 200 characters, got ""'],
	["a novel for a name", (f) => (f.car.name = "x".repeat(201)), "car.name", "must be text of 1 to 200 characters"],
	["no tank", (f) => (f.car.tank = null), "car.tank", "must be the tank in braces, got null"],
	[
		"a tank of nothing",
		(f) => (f.car.tank.capacityL = 0),
		"car.tank.capacityL",
		"must be more than 0 L and at most 2000 L, got 0",
	],
	[
		"a tanker",
		(f) => (f.car.tank.capacityL = 30000),
		"car.tank.capacityL",
		"must be more than 0 L and at most 2000 L, got 30000",
	],
	[
		"a perfect gauge",
		(f) => (f.car.tank.gaugeSd = 0),
		"car.tank.gaugeSd",
		"must be from 0.000001 to 0.5 of the tank, got 0",
	],
	[
		"a hopeless click",
		(f) => (f.car.tank.clickSd = 0.6),
		"car.tank.clickSd",
		"must be from 0.000001 to 0.5 of the tank",
	],
	[
		"no calibrations",
		(f) => delete f.car.calibrations,
		"car.calibrations",
		"is missing: it must be a list of calibrations",
	],
	[
		"an empty window",
		(f) => (f.car.calibrations[0].window = [0.3, 0.3]),
		'car.calibrations[0] (id "e30") window',
		"must have a lower end below its higher end, got [0.3,0.3]",
	],
	[
		"a window beyond 1",
		(f) => (f.car.calibrations[0].window = [0.3, 30]),
		'car.calibrations[0] (id "e30") window[1]',
		"must be a number from 0 to 1, got 30",
	],
	[
		"a window of three",
		(f) => (f.car.calibrations[0].window = [0, 0.5, 1]),
		'car.calibrations[0] (id "e30") window',
		"must be two contents, [low, high], each from 0 to 1, got a list",
	],
	[
		"percent for a fraction",
		(f) => (f.car.calibrations[0].calibratedFor = 30),
		'car.calibrations[0] (id "e30") calibratedFor',
		"must be a number from 0 to 1, got 30",
	],
	[
		"a certain budget",
		(f) => (f.car.calibrations[0].leanBudget = 1),
		'car.calibrations[0] (id "e30") leanBudget',
		"must be a chance between 0 and 1, got 1",
	],
	[
		"two calibrations of one id",
		(f) => f.car.calibrations.push(f.car.calibrations[0]),
		'car.calibrations[1] (id "e30") id',
		"must be its own: car.calibrations[0] has the same",
	],
	[
		"events that are no list",
		(f) => (f.events = {}),
		"events",
		"must be a list of events, perhaps empty: [], got an object",
	],
	["no events", (f) => delete f.events, "events", "is missing"],
	["too many events", (f) => (f.events = Array(20_001).fill(0)), "events", "must be at most 20000, got 20001"],
	[
		"too many calibrations",
		(f) => (f.car.calibrations = Array.from({ length: 101 }, (_, i) => ({ ...f.car.calibrations[0], id: `${i}` }))),
		"car.calibrations",
		"must be at most 100 calibrations, got a list",
	],
];

describe("parseLog refuses, and says where and why,", () => {
	test.each(notLogs)("%s", (_name, text, where, message) => {
		expectError(text, "notALog", where, message);
	});

	test.each(refused)("%s", (_name, text, where, message) => {
		expectError(text, "bad", where, message);
	});

	test.each(bad)("%s", (_name, mutate, where, message) => {
		expectError(broken(mutate), "bad", where, message);
	});

	test("a file over 12 MB", () => {
		expectError(`{"a": "${"x".repeat(12_000_000)}"}`, "notALog", "the file", "is over 12 MB");
	});

	test("a newer version, whatever else is in it", () => {
		const text = '{"format": "heeltap-log", "version": 2, "cars": []}';
		expectError(text, "newer", "version", "made by a newer version of the app: update the app");
	});
});
