import { expect, test } from "vitest";
import { type Broken, broken, errorOf, expectError } from "../helpers/brokenLogs";
import { placeOf, saidOf } from "../helpers/sentences";

// The order of the events of aLog().
const [start, flash, fill, tank, pump, trim, level, annul] = [0, 1, 2, 3, 4, 5, 6, 7];

const cases: Broken[] = [
	["an event that is none", (f) => (f.events[fill] = 7), "events[2]", "must be an event in braces, got 7"],
	["an event without an id", (f) => delete f.events[fill].id, "events[2].id", "is missing"],
	[
		"an event of no kind",
		(f) => delete f.events[fill].kind,
		'events[2] (id "fill") kind',
		"is missing: it must be start, fill",
	],
	[
		"an event of an unknown kind",
		(f) => (f.events[fill].kind = "wash"),
		'events[2] (id "fill") kind',
		'must be start, fill, reading, level, calibration or void, got "wash"',
	],
	[
		"a time without an offset",
		(f) => (f.events[fill].at = "2026-06-01T17:30:00"),
		'events[2] (id "fill") at',
		"must be a time with its offset, such as 2026-06-01T17:30:00+02:00",
	],
	[
		"a time as a number",
		(f) => (f.events[fill].at = 1780000000),
		'events[2] (id "fill") at',
		"must be a time with its offset",
	],
	[
		"a day that does not exist",
		(f) => (f.events[fill].at = "2026-02-29T12:00:00Z"),
		'events[2] (id "fill") at',
		"must be on a day that exists, from 1970 to 2200",
	],
	[
		"the month 13",
		(f) => (f.events[fill].at = "2026-13-01T12:00:00Z"),
		'events[2] (id "fill") at',
		"must be on a day that exists",
	],
	["the hour 24", (f) => (f.events[fill].at = "2026-01-01T24:00:00Z"), 'events[2] (id "fill") at', "must be a time"],
	[
		"the year 1969",
		(f) => (f.events[fill].at = "1969-12-31T23:00:00Z"),
		'events[2] (id "fill") at',
		"from 1970 to 2200",
	],
	[
		"the year 2201",
		(f) => (f.events[fill].at = "2201-01-01T00:00:00Z"),
		'events[2] (id "fill") at',
		"from 1970 to 2200",
	],
	[
		"a start of unknown contents",
		(f) => (f.events[start].contents = {}),
		'events[0] (id "start") contents',
		"must hold either range, or value and sd, got an object",
	],
	[
		"a value without its sd",
		(f) => (f.events[start].contents = { value: 0.1 }),
		'events[0] (id "start") contents',
		"must hold either range, or value and sd",
	],
	[
		"contents given both ways",
		(f) => (f.events[start].contents = { range: [0, 1], value: 0.1, sd: 0.1 }),
		'events[0] (id "start") contents.value',
		"must be left out beside the other way",
	],
	[
		"contents upside down",
		(f) => (f.events[start].contents = { range: [0.3, 0.1] }),
		'events[0] (id "start") contents.range',
		"must run from the lower content to the higher, got [0.3,0.1]",
	],
	[
		"a perfect start",
		(f) => (f.events[start].contents = { value: 0.1, sd: 0 }),
		'events[0] (id "start") contents.sd',
		"must be from 0.000001 to 1, got 0",
	],
	[
		"a gauge beyond full",
		(f) => (f.events[start].gauge = 1.1),
		'events[0] (id "start") gauge',
		"must be a number from 0 to 1, got 1.1",
	],
	[
		"a gauge of null",
		(f) => (f.events[start].gauge = null),
		'events[0] (id "start") gauge',
		"must be a number from 0 to 1, got null",
	],
	[
		"a fill of nothing",
		(f) => (f.events[fill].litres = 0),
		'events[2] (id "fill") litres',
		"must be more than 0 L and at most 2000 L, got 0",
	],
	[
		"a fill of less than nothing",
		(f) => (f.events[fill].litres = -3),
		'events[2] (id "fill") litres',
		"must be more than 0 L and at most 2000 L, got -3",
	],
	[
		"a fill without litres",
		(f) => delete f.events[fill].litres,
		'events[2] (id "fill") litres',
		"is missing: it must be more than 0 L",
	],
	[
		"litres in quotes",
		(f) => (f.events[fill].litres = "15.5"),
		'events[2] (id "fill") litres',
		'must be a number without quotes, got "15.5"',
	],
	["a fill of no stop", (f) => delete f.events[fill].stop, 'events[2] (id "fill") stop', "is missing"],
	[
		"a fill of no product",
		(f) => delete f.events[fill].product,
		'events[2] (id "fill") product',
		"is missing: it must be a product: its id and range",
	],
	[
		"a product upside down",
		(f) => (f.events[fill].product = { id: "E85", range: [0.83, 0.51] }),
		'events[2] (id "fill") product.range',
		"must run from the lower content to the higher",
	],
	[
		"a product's range of text",
		(f) => (f.events[fill].product = { id: "E85", range: [0, "1"] }),
		'events[2] (id "fill") product.range[1]',
		"must be a number without quotes",
	],
	[
		"an unsure click",
		(f) => (f.events[fill].toClick = "yes"),
		'events[2] (id "fill") toClick',
		'must be true or false, got "yes"',
	],
	[
		"a reading of nothing",
		(f) => delete f.events[tank].of,
		'events[3] (id "tank") of',
		"is missing: it must be tank, pump or trim",
	],
	[
		"a reading without its sd",
		(f) => delete f.events[tank].sd,
		'events[3] (id "tank") sd',
		"is missing: it must be from 0.000001 to 1",
	],
	[
		"a content over 1",
		(f) => (f.events[tank].value = 31),
		'events[3] (id "tank") value',
		"must be a number from 0 to 1, got 31",
	],
	["a pump of no place", (f) => delete f.events[pump].place, 'events[4] (id "pump") place', "is missing"],
	[
		"a trim beyond belief",
		(f) => (f.events[trim].value = -0.95),
		'events[5] (id "trim") value',
		"must be a trim from -0.9 to 9, got -0.95",
	],
	[
		"a trim of no calibration",
		(f) => delete f.events[trim].calibratedFor,
		'events[5] (id "trim") calibratedFor',
		"is missing",
	],
	["a level without a gauge", (f) => delete f.events[level].gauge, 'events[6] (id "level") gauge', "is missing"],
	[
		"a calibration the car has not",
		(f) => (f.events[flash].calibration = "e60"),
		'events[1] (id "flash") calibration',
		'must be the id of one of the car\'s calibrations, got "e60"',
	],
	[
		"a void of nothing",
		(f) => (f.events[annul].target = "?"),
		'events[7] (id "void") target',
		'must be the id of an event of this log, got "?"',
	],
	[
		"a void of itself",
		(f) => (f.events[annul].target = "void"),
		'events[7] (id "void") target',
		"must be the id of another event",
	],
	[
		"two events of one id",
		(f) => (f.events[level].id = "fill"),
		'events[6] (id "fill") id',
		"must be its own: events[2] has the same, so rename one or remove the copy",
	],
	["the same event twice", (f) => f.events.push(f.events[fill]), 'events[8] (id "fill") id', "must be its own"],
	[
		"a place that turns the words after it",
		(f) => (f.events[fill].place = "gnp\u202e.exe"),
		'events[2] (id "fill") place',
		'must not hold line breaks, controls, turns of direction, or more than 30 marks on one letter, got "gnp\\u202e.exe"',
	],
	[
		"a method of two lines",
		(f) => (f.events[tank].method = "a\nb"),
		'events[3] (id "tank") method',
		"must not hold line breaks",
	],
	[
		"a product under a tower of marks",
		(f) => (f.events[fill].product.id = `Z${"\u0351".repeat(31)}`),
		'events[2] (id "fill") product.id',
		"more than 30 marks on one letter",
	],
	[
		"an id in disguise",
		(f) => Object.assign(f.events[fill], { id: "a\u202eb\n", litres: 0 }),
		'events[2] (id "a\\u202eb\\n") litres',
		"must be more than 0 L",
	],
];

test.each(cases)("parseLog refuses %s, and says where and why", (_name, mutate, where, message) => {
	expectError(broken(mutate), "bad", where, message);
});

test("logSentence gives the place and the reason in one line", () => {
	const error = errorOf(broken((file) => (file.events[fill].litres = 0)));
	expect(saidOf(error)).toBe('events[2] (id "fill") litres: must be more than 0 L and at most 2000 L, got 0');
});

test("parseLog names the first fault, and broken JSON before all else", () => {
	const text = broken((file) => {
		file.events[start].gauge = 2;
		file.events[fill].litres = 0;
	});
	expect(placeOf(errorOf(text))).toBe('events[0] (id "start") gauge');
	expect(placeOf(errorOf(`${text}}`))).toMatch(/^line 1, column \d+$/);
});
