/**
 * What a column is, told from its name and unit: plain words of the trade and the names of SAE J1979 (from memory: SHRTFT1,
 * LONGFT1, ECT, LOAD_PCT, TP, MAP, VSS, EQ_RAT, ALCH_PCT, FUELSYS1, RUNTM).
 */
import { type Column, type Columns, type Role, type Unit, unitsOf } from "./role";
import { splitHeader, unitNamed } from "./unitNames";

interface Rule {
	readonly role: Role;
	readonly is: RegExp;
	readonly not?: RegExp;
}

const wanted = /\b(command|target|desire|demand|set ?point|request|reference|wanted|nominal)/;
const mixture = /\blambda\b|\bafr\b|\ba f\b|\bair (to )?fuel\b|\bfuel air\b|\bequivalence\b|\beq rat\b/;
const trims = /\btrims?\b|\bft\b|ft \d\b|\b(st|lt)ft\b|\b(shrt|long)ft\b|\bfuel correction\b/;
const short = /\bshort\b|\bst\b|\bstft\b|\bshrtft\b/;
const long = /\blong\b|\blt\b|\bltft\b|\blongft\b|\blearned\b/;
const second = /\b(bank|b) ?2\b|ft 2\b|trim 2\b|\b(st|lt) 2\b/;
/** Trims of single sensors, of further banks, and what is only aimed at. */
const otherTrim =
	/\bsecondary\b|\bo2\b|\bsensor\b|\brear\b|\bpost\b|ft ?\d\d\b|ft ?[34]\b|\b(bank|b) ?[34]\b|\bidle\b|\bcell\b/;

const rules: readonly Rule[] = [
	{ role: "total", is: /\b(total|combined|overall|sum)\b.*\b(trims?|correction)\b/, not: otherTrim },
	...trimRules("short2", short, second),
	...trimRules("long2", long, second),
	...trimRules("short1", short, null),
	...trimRules("long1", long, null),
	{ role: "commanded", is: both(mixture, wanted), not: /\berror\b|\bbank 2\b/ },
	{ role: "commanded", is: /^eq rat$|^(fuel air )?(commanded )?equivalence ratio$/ },
	{
		role: "lambda",
		is: /\blambda\b|\bafr\b|\ba f\b|\bair (to )?fuel\b|\beq rat ?11\b|\bequivalence ratio\b|\bwide ?band\b|\bwbo2\b/,
		not: /\berror\b|\bcorrection\b|\bcontrol\b|\bintegrator\b|\btrim\b|\bbank 2\b|\bb2|s ?2\b|\bsensor 2\b|\brear\b|\bpost\b|\bvoltage\b|\bcurrent\b|\bstoich|\bheater\b|\bstatus\b|\b2$/,
	},
	{
		role: "ethanol",
		is: /\bethanol\b|\balcohol\b|\balch\b|\bflex ?fuel (content|composition|percent|percentage)?$|\bfuel composition\b/,
		not: /\btemp/,
	},
	{ role: "fuelSystem", is: /^fuel ?sys(tem)? ?1?( ?(status|state|a))?$|\bloop (status|state)\b|^(closed|open) loop/ },
	{
		role: "coolant",
		is: /\bcoolant\b|\bect\b|\bclt\b|^engine temp(erature)?$|\bwater temp/,
		not: /\b2$|\boil\b|\bfan\b|\blevel\b|\bflow\b|\bpressure\b|\bvoltage\b|\btarget\b/,
	},
	{
		role: "throttle",
		is: /\bthrottle\b|\btps?\b/,
		not: /\brelative\b|\bpedal\b|\baccel|\bactuator\b|\bcontrol\b|\b[b-g]$|\b2$|\bvoltage\b/,
	},
	{
		role: "load",
		is: /\bload\b|\bclv\b/,
		not: /\babs|\broad\b|\belectric|\balternator\b|\bgenerator\b|\bmax|\bfuel\b/,
	},
	{
		role: "manifold",
		is: /\bmanifold\b.*\bpressure\b|\bmap\b|\b(intake|inlet)\b.*\bpressure\b/,
		not: /\bbaro|\bb$|\bvoltage\b|\bnumber\b|\bswitch\b/,
	},
	{ role: "speed", is: /\b(vehicle|road|car)\b ?speed\b|\bvss\b|^speed$/, not: /\blimit/ },
	{
		role: "rpm",
		is: /\brpm\b|\bengine (speed|revs|revolutions)\b|\brevolutions per minute\b/,
		not: /\bturb|\bidle\b|\bfan\b|\bpump\b|\bshaft\b|\b(out|in)put\b|\blimit|\bwheel\b/,
	},
	{
		role: "time",
		is: /^(elapsed|log|logging|recording|relative|session|device|offset|clock)? ?time( ?stamp)?$|^time (elapsed|since start|of day|h+ m+ s+.*)$|^(elapsed|seconds|secs?|milliseconds|timestamp|date ?time|date and time|clock|t)$/,
	},
];

/** Second best: taken where nothing better is there. */
const fallbacks: readonly Rule[] = [
	{ role: "time", is: /^runtm$|^(engine )?run ?time( since engine start)?$|^time since engine start$/ },
	{ role: "load", is: /\b(absolute|abs)\b.*\bload\b|^load abs$/ },
	{ role: "throttle", is: /\brelative throttle\b|\b(accelerator|pedal)\b.*\b(position|d)\b|\bthrottle actuator\b/ },
	{ role: "manifold", is: /^boost( pressure)?$|^charge pressure$/ },
	{ role: "speed", is: /^gps speed|^speed gps|\bwheel speed\b/ },
];

/** All columns of a log. Of two that are the same thing the first is taken. */
export function recognisedAll(headers: readonly string[], unitsBelow: readonly string[] = []): Columns {
	const columns: (Column | null)[] = headers.map(() => null);
	const taken = new Set<Role>();
	for (const list of [rules, fallbacks]) {
		for (const [i, header] of headers.entries()) {
			const column = columns[i] === null ? firstOf(list, header, unitsBelow[i] ?? "") : null;
			if (!column || taken.has(column.role)) continue;
			columns[i] = column;
			taken.add(column.role);
		}
	}
	return columns;
}

function firstOf(list: readonly Rule[], header: string, unitBelow: string): Column | null {
	const { words, unit: unitInside } = splitHeader(header);
	const unit = unitInside ?? unitNamed(unitBelow);
	const rule = list.find(({ is, not }) => is.test(words) && !not?.test(words));
	if (!rule || (list === rules && rule.role !== "commanded" && wanted.test(words))) return null;
	if (unit === null) return { role: rule.role, unit: only(rule.role) };
	// In another unit it is another thing, whatever its name.
	return unit !== "foreign" && unitsOf[rule.role].includes(unit) ? { role: rule.role, unit } : null;
}

function only(role: Role): Unit | null {
	return unitsOf[role].length === 1 ? unitsOf[role][0] : null;
}

function trimRules(role: Role, term: RegExp, bank: RegExp | null): Rule[] {
	const is = bank ? both(both(trims, term), bank) : both(trims, term);
	return [{ role, is, not: otherTrim }];
}

/** Matches where both do, in any order. */
function both(a: RegExp, b: RegExp): RegExp {
	return new RegExp(`^(?=.*(?:${a.source}))(?=.*(?:${b.source}))`);
}
