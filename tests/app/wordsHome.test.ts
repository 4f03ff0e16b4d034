/** What people read stands in src/app/words, where it can be said in another language. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { saidIn } from "../helpers/saidInCode";

const app = join(import.meta.dirname, "../../src/app");

/** What looks like words and is not said in any language, by file. */
const exceptions: Readonly<Record<string, readonly string[]>> = {
	// The app's name.
	"App.tsx": ["Heeltap"],
	// Units, and fuels by the names of the trade.
	"components/TankFields.tsx": ["imp gal"],
	"screens/engine/LimitBars.tsx": ["E0", "E50", "E100"],
	"screens/engine/PropertyCurve.tsx": ["E0:", "E100:"],
	// How something was measured, as the log keeps it; words/methods tells it.
	"demo.ts": ["ethanol sensor", "water tube"],
	"dataLogReadings.ts": ["data log", "data log, lambda under load", "data log, the car’s own report (PID 52)"],
	"screens/readings/analyserForm.ts": ["ethanol analyser"],
	"screens/readings/reportedForm.ts": ["the car’s own report (PID ▪)"],
	"screens/readings/trimForm.ts": ["scan tool"],
	"screens/readings/tubeForm.ts": ["water tube, ▪ mL with ▪ mL of water, layer ▪ mL"],
	// Names under which things are kept, and of workers.
	"keepFocus.ts": ["main, dialog, section, form, fieldset, ul, ol"],
	"automaticBackup.ts": ["▪/backup file"],
	"keptData.ts": ["asked to keep data", "(display-mode: standalone)"],
	"logReader.ts": ["data log"],
	"rememberedColumns.ts": ["data log columns"],
	"remedies.ts": ["before ▪"],
	"tableDraft.ts": ["table of mixes"],
	"useDataLog.ts": ["▪/data log"],
	"components/CorrectReading.tsx": ["▪/correct reading/▪"],
	"components/MeasureAdvice.tsx": ["tank as it stands"],
	"fuelSystemUnits.ts": ["fuel system units"],
	"fuelSystemForm.ts": ["Sd"],
	// Countries, a typeface, classes.
	"localFuels.ts": ["AT BE BG CH CY CZ DE DK EE ES FI FR GB GR HR HU IE IS IT LI LT LU LV MT NL NO PL PT RO SE SI SK"],
	"money.ts": ["AT BE CY DE EE ES FI FR GR HR IE IT LT LU LV MT NL PT SI SK", "CH LI"],
	"shareImage.ts": ["▪ ▪px system-ui, sans-serif"],
	"screens/why/OriginCard.tsx": ["spread halo"],
};

test("nothing that people read stands in the code of the app", () => {
	const files = readdirSync(app, { recursive: true, encoding: "utf8" })
		.map((path) => path.replaceAll("\\", "/"))
		.filter((path) => /\.tsx?$/.test(path) && !path.startsWith("words/"));
	expect(files.length).toBeGreaterThan(100);
	const found = files.flatMap((path) =>
		saidIn(path, readFileSync(join(app, path), "utf8"))
			.filter(({ text }) => !exceptions[path]?.includes(text))
			.map(({ line, text }) => `src/app/${path}:${line} says “${text}”`),
	);
	expect(found).toEqual([]);
});

test("every exception is still one", () => {
	const stale = Object.entries(exceptions).flatMap(([path, texts]) => {
		const said = saidIn(path, readFileSync(join(app, path), "utf8")).map(({ text }) => text);
		return texts.filter((text) => !said.includes(text)).map((text) => `src/app/${path} no longer says “${text}”`);
	});
	expect(stale).toEqual([]);
});

describe("saidIn", () => {
	test.each([
		["text of an element", "const a = <p>Saved {b}</p>;", "Saved"],
		["a letter between two values", "const a = <p>{a} x {b}</p>;", "x"],
		["an attribute", 'const a = <input placeholder="The grey one" />;', "The grey one"],
		["a label on a button", 'const a = { label: "Undo" };', "Undo"],
		["a sentence from pieces", ["const a = `Save $", "{b}, without $", "{c}`;"].join(""), "Save ▪, without ▪"],
		["a small word in an attribute", 'const a = <Field label="window" />;', "window"],
		["a choice between two", 'const a = <p>{b ? "Not now" : null}</p>;', "Not now"],
	])("finds %s", (_name, code, text) => {
		expect(saidIn("a.tsx", `\n${code}`)).toEqual([{ line: 2, text }]);
	});

	test.each([
		["classes", 'const a = <p class="button wide" />;'],
		["types", 'type A = "In two words" | B["Another one"];'],
		["modules", 'import a from "./a b c"; const b = () => import("./some of it");'],
		["errors of programmers", 'throw new RangeError("litres must be more");'],
		["keys and figures", ["const a = [`$", "{b}/fill`, `M$", "{x} 12 V36`, 'noWindow', <p>{a}: 12</p>];"].join("")],
	])("leaves %s alone", (_name, code) => {
		expect(saidIn("a.tsx", code)).toEqual([]);
	});
});
