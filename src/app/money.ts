/** Money as people write it: in the car's currency, or as a plain number where nobody has said which. */
import { litresPer, type VolumeUnit } from "../domain/units";
import { distanceUnit, kmPerMile } from "./format";
import { locale } from "./words/language";
import { moneyWords } from "./words/money";

const formats = new Map<string, Intl.NumberFormat>();

function formatFor(currency: string | undefined, digits: number | null): Intl.NumberFormat {
	const key = `${currency} ${digits}`;
	const known = formats.get(key);
	if (known) return known;
	const made = new Intl.NumberFormat(locale, {
		...(currency === undefined
			? { minimumFractionDigits: 2, maximumFractionDigits: 2 }
			: { style: "currency", currency }),
		...(digits === null ? {} : { minimumFractionDigits: digits, maximumFractionDigits: digits }),
	});
	formats.set(key, made);
	return made;
}

/** An amount; without its hundredths from ten thousand on, where they only hide what counts. */
export function money(amount: number, currency: string | undefined): string {
	// Never "−0.00": what rounds to nothing is nothing.
	const shown = Math.abs(amount) < 0.005 ? 0 : amount;
	return formatFor(currency, Math.abs(shown) >= 1e4 ? 0 : null).format(shown);
}

/** What one litre or gallon costs: pumps show tenths of a cent. */
export function unitPrice(perLitre: number, unit: VolumeUnit, currency: string | undefined): string {
	const price = perLitre * litresPer[unit];
	return moneyWords().unitPrice(formatFor(currency, price >= 100 ? null : 3).format(price), unit);
}

/** Distance in which costs are told: 100 km, or a mile. */
export function costDistance(unit: VolumeUnit): { readonly km: number; readonly words: string } {
	const words = moneyWords();
	return distanceUnit(unit) === "km" ? { km: 100, words: words.hundredKm } : { km: kmPerMile, words: words.mile };
}

/** The cost of that distance. */
export function distanceMoney(perKm: number, unit: VolumeUnit, currency: string | undefined): string {
	const amount = perKm * costDistance(unit).km;
	return amount < 1 ? formatFor(currency, 3).format(amount) : money(amount, currency);
}

/** ISO 4217 codes that this browser knows; empty where it does not say. */
export function knownCurrencies(): readonly string[] {
	return typeof Intl.supportedValuesOf === "function" ? Intl.supportedValuesOf("currency") : [];
}

/** The currency's name in the reader's language, where the browser knows it. */
export function currencyName(code: string): string {
	try {
		return new Intl.DisplayNames(locale, { type: "currency" }).of(code) ?? code;
	} catch {
		return code;
	}
}

/** Countries by what is paid there, for a suggestion only; ISO 3166 and ISO 4217. */
const paidWith: Readonly<Record<string, string>> = {
	EUR: "AT BE CY DE EE ES FI FR GR HR IE IT LT LU LV MT NL PT SI SK",
	USD: "US",
	GBP: "GB",
	CAD: "CA",
	AUD: "AU",
	NZD: "NZ",
	BRL: "BR",
	CHF: "CH LI",
	SEK: "SE",
	NOK: "NO",
	DKK: "DK",
	PLN: "PL",
	CZK: "CZ",
	HUF: "HU",
	RON: "RO",
	THB: "TH",
	JPY: "JP",
	MXN: "MX",
	INR: "IN",
	ZAR: "ZA",
};

/** What the phone's language and country make likely; null where they say nothing. */
export function likelyCurrency(language: string | undefined): string | null {
	if (!language) return null;
	try {
		const { region } = new Intl.Locale(language).maximize();
		const found = Object.entries(paidWith).find(([, countries]) => region && countries.split(" ").includes(region));
		return found?.[0] ?? null;
	} catch {
		return null;
	}
}
