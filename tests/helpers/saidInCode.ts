/** Finds in code what looks as if people were to read it: words that belong into src/app/words. */
import { parseSync } from "vite";

export interface Said {
	readonly line: number;
	readonly text: string;
}

interface Node {
	readonly type: string;
	readonly start: number;
	readonly [field: string]: unknown;
}

/** Attributes that nobody reads. Any other may hold words. */
const unread = new Set(
	"class d id for href type accept viewBox transform key aria-describedby aria-labelledby".split(" "),
);

/** Attributes that are shown or read out, whatever stands in them. */
const read = new Set("label aria-label aria-valuetext title placeholder alt summary caption hint more".split(" "));

/** Stands for what is put into a template. */
const figure = "▪";

/** Two words in a row, or a word beside a figure, or one alone that begins large, as on a button. */
const prose = /\p{Letter}{2,}[,;:.!?…”“]* (\p{Letter}{2,}|▪)|▪[,;:.!?…”“]* \p{Letter}{2,}|^\p{Lu}\p{Ll}+[.:!?…]*$/u;

export function saidIn(path: string, code: string): Said[] {
	const { program, errors } = parseSync(path, code);
	if (errors.length > 0) throw new Error(`${path} can't be read: ${errors[0]?.message}`);
	const found: Said[] = [];
	const note = (start: number, text: string) => {
		found.push({ line: code.slice(0, start).split("\n").length, text: text.trim().replace(/\s+/g, " ") });
	};

	function visit(node: Node): void {
		if (node.type === "JSXText" && /\p{Letter}/u.test(String(node.value))) note(node.start, String(node.value));
		if (node.type === "Literal" && typeof node.value === "string" && prose.test(node.value))
			note(node.start, node.value);
		if (node.type === "TemplateLiteral" && prose.test(textOf(node))) note(node.start, textOf(node));
		if (isOutOfSight(node)) return;
		if (node.type === "JSXAttribute" && read.has(nameOf(node.name))) {
			const { type, value } = (node.value ?? {}) as Partial<Node>;
			if (type === "Literal" && /\p{Letter}/u.test(String(value))) {
				note(node.start, String(value));
				return;
			}
		}
		for (const inner of innerOf(node)) visit(inner);
	}
	visit(program as unknown as Node);
	return found;
}

/** Types, names of modules, errors of programmers, and attributes that nobody reads. */
function isOutOfSight(node: Node): boolean {
	if (node.type.startsWith("TS") && node.type !== "TSAsExpression" && node.type !== "TSSatisfiesExpression")
		return true;
	if (/^(Import|Export(Named|All))Declaration$/.test(node.type) && node.source) return true;
	if (node.type === "ImportExpression") return true;
	if (node.type === "NewExpression") return /Error$/.test(nameOf(node.callee));
	return node.type === "JSXAttribute" && unread.has(nameOf(node.name));
}

function textOf({ quasis }: Node): string {
	return (quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join(figure);
}

function nameOf(node: unknown): string {
	return String((node as Partial<Node>)?.name ?? "");
}

function innerOf(node: Node): Node[] {
	return Object.values(node)
		.flat()
		.filter((value): value is Node => typeof (value as Partial<Node> | null)?.type === "string");
}
