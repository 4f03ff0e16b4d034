/** Fuels that are common where the phone says it is at home, to be offered while the log knows none. */

interface LocalFuels {
	/** By their ids in the catalogue. */
	readonly strong: string;
	readonly gasolines: readonly string[];
}

const us: LocalFuels = { strong: "flex-51-83", gasolines: ["gasoline-e10", "gasoline-to-10", "gasoline-e0"] };
const eu: LocalFuels = { strong: "flex-e85-eu", gasolines: ["gasoline-to-10", "gasoline-e5", "gasoline-e0"] };
const elsewhere: Readonly<Record<string, LocalFuels>> = {
	AU: { strong: "flex-e85-au", gasolines: ["gasoline-to-10", "gasoline-e0"] },
	BR: { strong: "ethanol-e98", gasolines: ["gasoline-c", "gasoline-e0"] },
};

/** Where EN 228 and EN 15293 hold (ISO 3166). */
const european =
	"AT BE BG CH CY CZ DE DK EE ES FI FR GB GR HR HU IE IS IT LI LT LU LV MT NL NO PL PT RO SE SI SK".split(" ");

export function localFuels(language = globalThis.navigator?.language ?? "en"): LocalFuels {
	const region = regionOf(language);
	return european.includes(region) ? eu : (elsewhere[region] ?? us);
}

/** Some browsers without a language call it "C", which is none. */
function regionOf(language: string): string {
	// Told outright, as most browsers do, it need not be looked up, which takes a phone a while.
	const [, told] = /^[a-z]{2}-([A-Z]{2})$/.exec(language) ?? [];
	if (told) return told;
	try {
		return new Intl.Locale(language).maximize().region ?? "US";
	} catch {
		return "US";
	}
}
